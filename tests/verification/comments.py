"""The comments of a test file, by the line they stand on."""

import ast
import io
import tokenize
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Comments:
    """Text by line number: comments on a line of their own, and comments after code."""

    alone: dict[int, str]
    trailing: dict[int, str]

    @classmethod
    def of(cls, text: str) -> "Comments":
        """Read them from a file's text."""
        alone, trailing = {}, {}
        for token in tokenize.generate_tokens(io.StringIO(text).readline):
            words = token.string.lstrip("#").strip()
            if token.type == tokenize.COMMENT and words != "fmt: skip":
                lonely = not token.line[: token.start[1]].strip()
                (alone if lonely else trailing)[token.start[0]] = words
        return cls(alone, trailing)

    def above(self, node: ast.stmt) -> str:
        """The block of comments that ends on the line above a statement or its decorators."""
        decorated = getattr(node, "decorator_list", [])
        return self._block(min([node.lineno, *(one.lineno for one in decorated)]) - 1)

    def _block(self, last: int) -> str:
        lines = []
        while last in self.alone:
            lines.append(self.alone[last])
            last -= 1
        return " ".join(reversed(lines))

    def inside(self, node: ast.FunctionDef) -> str:
        """All that is said in a function."""
        both = sorted({**self.alone, **self.trailing}.items())
        return " ".join(text for line, text in both if node.lineno <= line <= _end(node))

    def beside(self, node: ast.stmt, function: ast.FunctionDef) -> str:
        """In or behind a statement; else the nearest block above it in its function; else any."""
        both = sorted({**self.alone, **self.trailing}.items())
        within = [text for line, text in both if node.lineno <= line <= _end(node)]
        if within:
            return " ".join(within)
        before = [line for line in self.alone if function.lineno < line < node.lineno]
        return self._block(max(before)) if before else self.inside(function)

    def right_at(self, node: ast.stmt, function: ast.FunctionDef) -> str:
        """In or behind a statement, or right above it and other assertions."""
        lines = {line: one for one in ast.walk(function) if isinstance(one, ast.Assert)
                 for line in range(one.lineno, _end(one) + 1)}  # fmt: skip
        first = node.lineno
        while first - 1 in lines and first - 1 not in self.trailing:
            first = lines[first - 1].lineno
        within = range(node.lineno, _end(node) + 1)
        own = [self.trailing.get(line) or self.alone.get(line, "") for line in within]
        return " ".join(filter(None, own)) or self._block(first - 1)

    def of_names(self, tree: ast.Module, nodes: Iterable[ast.AST]) -> str:
        """What is said above or beside the constants of the file that some code uses."""
        used = {n.id for node in nodes for n in ast.walk(node) if isinstance(n, ast.Name)}
        for node in tree.body:
            if isinstance(node, ast.Assign) and used & {ast.unparse(t) for t in node.targets}:
                said = self.trailing.get(_end(node)) or self._over(tree, node)
                if said:
                    return said
        return ""

    def _over(self, tree: ast.Module, node: ast.stmt) -> str:
        """The block above a constant, or above the constants right above it."""
        ends = {_end(one): one for one in tree.body if isinstance(one, ast.Assign)}
        while not self.above(node) and node.lineno - 1 in ends:
            node = ends[node.lineno - 1]
        return self.above(node)


def _end(node: ast.stmt) -> int:
    return node.end_lineno or node.lineno
