package life

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"pourbench/pour/logbook"
)

// fromFolder is the path of a picture from the folder of the pours' files, with forward slashes, so that folder and pictures move together.
func fromFolder(book logbook.Book, path string) (string, error) {
	if path == "" {
		return "", errors.New("name the picture's file")
	}
	info, err := os.Stat(path)
	if err != nil {
		return "", fmt.Errorf("find the picture: %w", err)
	}
	if !info.Mode().IsRegular() {
		return "", fmt.Errorf("find the picture: %s is no file", path)
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return "", fmt.Errorf("find the picture: %w", err)
	}
	folder, err := filepath.Abs(book.Folder())
	if err != nil {
		return "", fmt.Errorf("find the picture: %w", err)
	}
	rel, err := filepath.Rel(folder, full)
	if err != nil {
		return "", fmt.Errorf("find the picture: it and the logbook are on different drives; copy it to that of %s", folder)
	}
	return filepath.ToSlash(rel), nil
}

// isFile reports whether there is a file.
func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// PhotoFile is where the picture of an event lies. Whether it is there is for who opens it to see.
func PhotoFile(book logbook.Book, e logbook.Event) string {
	path := filepath.FromSlash(e.Life.Path)
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(book.Folder(), path)
}
