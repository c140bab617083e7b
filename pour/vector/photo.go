package vector

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"image/jpeg"
	"image/png"
)

// mostPixels is what a picture may have: at 600 to the inch 270 mm square.
const mostPixels = 40e6

// Photo makes a picture of a file in the form of PNG or JPEG, as high as it is wide by its own shape. Whatever depth and order its pixels were
// in, they are written anew, so that every reader can show them.
func Photo(file []byte, wide float64) (Picture, error) {
	measure, decode := png.DecodeConfig, png.Decode
	switch {
	case bytes.HasPrefix(file, []byte("\x89PNG")):
	case bytes.HasPrefix(file, []byte("\xff\xd8")):
		measure, decode = jpeg.DecodeConfig, jpeg.Decode
	default:
		return Picture{}, errors.New("it is no picture that can be read: save it as PNG or JPEG")
	}
	size, err := measure(bytes.NewReader(file))
	if err != nil {
		return Picture{}, fmt.Errorf("it begins as a picture, but cannot be read (%w): save it anew as PNG or JPEG", err)
	}
	if size.Width < 1 || size.Height < 1 || float64(size.Width)*float64(size.Height) > mostPixels {
		return Picture{}, fmt.Errorf("it has %d by %d pixels: make it smaller, 2000 by 2000 are enough for print", size.Width, size.Height)
	}
	in, err := decode(bytes.NewReader(file))
	if err != nil {
		return Picture{}, fmt.Errorf("it begins as a picture, but cannot be read (%w): save it anew as PNG or JPEG", err)
	}
	flat := image.NewNRGBA(image.Rect(0, 0, size.Width, size.Height))
	draw.Draw(flat, flat.Bounds(), in, in.Bounds().Min, draw.Src)
	var out bytes.Buffer
	if err := png.Encode(&out, flat); err != nil {
		return Picture{}, fmt.Errorf("write the picture: %w", err)
	}
	return Picture{Wide: wide, High: wide * float64(size.Height) / float64(size.Width), PNG: out.Bytes()}, nil
}

// nameOf is what a picture is known by, its own sum.
func nameOf(file []byte) string {
	sum := sha256.Sum256(file)
	return hex.EncodeToString(sum[:])
}
