// Package units reads lengths, speeds, temperatures and altitudes as people type
// them and writes them as people read them. It is the one place for feet, inches
// and miles; everything else is SI.
package units
