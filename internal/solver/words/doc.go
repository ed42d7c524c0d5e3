// Package words puts reports and maps into sentences. A figure in a sentence is
// rounded to the less reassuring side.
package words
