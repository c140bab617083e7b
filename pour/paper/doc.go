// Package paper is what is handed on: the checklist a pour is made from, the figures as JSON, the warnings as text.
//
// It draws a [pour.Sheet] and works nothing out. Every figure goes through [pour.Show], so that paper and screen agree to the digit.
package paper
