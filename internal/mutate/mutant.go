package main

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"slices"
	"strings"
)

// mutant is one small fault put into one file: the bytes from start to end are
// replaced.
type mutant struct {
	file       string
	line       int
	start, end int
	with       string
	what       string // for people
}

// apply is the file's text with the fault in it.
func (m mutant) apply(source []byte) []byte {
	return append(append(bytes.Clone(source[:m.start]), m.with...), source[m.end:]...)
}

// swaps are the operators and what each is replaced by.
var swaps = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN,
	token.MUL_ASSIGN: token.QUO_ASSIGN, token.QUO_ASSIGN: token.MUL_ASSIGN,
	token.INC: token.DEC, token.DEC: token.INC,
}

// mutants lists every fault that can be put into a file by changing one thing.
// Some of them do not compile, which only the compiler can tell.
func mutants(name string, source []byte) ([]mutant, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, name, source, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var out []mutant
	at := func(p token.Pos) int { return files.Position(p).Offset }
	text := func(n ast.Node) string { return string(source[at(n.Pos()):at(n.End())]) }
	add := func(from, to token.Pos, with, what string) {
		out = append(out, mutant{name, files.Position(from).Line, at(from), at(to), with, what})
	}
	swap := func(pos token.Pos, op token.Token) {
		if with, ok := swaps[op]; ok {
			add(pos, pos+token.Pos(len(op.String())), with.String(), op.String()+" becomes "+with.String())
		}
	}
	remove := func(n ast.Node) { add(n.Pos(), n.End(), "", "without "+oneLine(text(n))) }
	results := []*ast.FieldList{} // of the functions around a node
	var walk func(n ast.Node)
	visit := func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.FuncDecl:
			if n.Body != nil {
				results = append(results, n.Type.Results)
				walk(n.Body)
				results = results[:len(results)-1]
			}
			return false
		case *ast.FuncLit:
			results = append(results, n.Type.Results)
			walk(n.Body)
			results = results[:len(results)-1]
			return false
		case *ast.BinaryExpr:
			swap(n.OpPos, n.Op)
		case *ast.UnaryExpr:
			if n.Op == token.SUB || n.Op == token.NOT {
				add(n.OpPos, n.OpPos+1, "", "without "+n.Op.String())
			}
		case *ast.IfStmt:
			add(n.Cond.Pos(), n.Cond.End(), "!("+text(n.Cond)+")", "if not "+oneLine(text(n.Cond)))
		case *ast.BasicLit:
			if n.Kind == token.INT || n.Kind == token.FLOAT {
				add(n.Pos(), n.End(), "("+n.Value+"+1)", n.Value+" becomes "+n.Value+"+1")
			}
		case *ast.IncDecStmt:
			swap(n.TokPos, n.Tok)
		case *ast.AssignStmt:
			swap(n.TokPos, n.Tok)
			if n.Tok != token.DEFINE {
				remove(n)
			}
		case *ast.ExprStmt:
			remove(n)
		case *ast.ReturnStmt:
			// To return zero for zero is no fault.
			if zeros := zeroValues(files, results[len(results)-1]); zeros != "" && slices.ContainsFunc(n.Results, notZero) {
				add(n.Pos(), n.End(), "return "+zeros, "returns zero")
			}
		}
		return true
	}
	walk = func(n ast.Node) { ast.Inspect(n, visit) }
	walk(file)
	return out, nil
}

// notZero reports whether an expression is not plainly a zero value.
func notZero(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return strings.Trim(e.Value, "0.\"`") != ""
	case *ast.Ident:
		return e.Name != "nil" && e.Name != "false"
	case *ast.CompositeLit:
		return len(e.Elts) > 0
	}
	return true
}

// zeroValues writes the zero values of a function's results.
func zeroValues(files *token.FileSet, results *ast.FieldList) string {
	if results == nil {
		return ""
	}
	var zeros []string
	for _, f := range results.List {
		var kind strings.Builder
		if printer.Fprint(&kind, files, f.Type) != nil {
			return ""
		}
		for range max(1, len(f.Names)) {
			zeros = append(zeros, "*new("+kind.String()+")")
		}
	}
	return strings.Join(zeros, ", ")
}

// oneLine is the beginning of a text, on one line.
func oneLine(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	const most = 60
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
