"""Small changes to a module, one at a time: the mutants that `mutants.py` has the tests look for.

A mutation is known by its number, in the order in which `sites` walks the module. Annotations,
decorators, docstrings and format specifications are left alone: nothing in them is computed.
"""

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import CodeType

OPERATORS = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult, ast.Mod: ast.Mult, ast.Pow: ast.Mult,
    ast.BitAnd: ast.BitOr, ast.BitOr: ast.BitAnd, ast.And: ast.Or, ast.Or: ast.And,
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq, ast.NotEq: ast.Eq, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.USub: ast.UAdd,
}  # fmt: skip

NAMES = {
    "min": "max", "minimum": "maximum", "argmin": "argmax", "nanmin": "nanmax",
    "nanargmin": "nanargmax", "sin": "cos", "any": "all", "floor": "ceil", "isnan": "isfinite",
}  # fmt: skip
NAMES |= {new: old for old, new in NAMES.items()}

NOT_COMPUTED = ("annotation", "returns", "decorator_list", "format_spec")

Change = Callable[[], None]
Site = tuple[ast.AST, str, Change]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutation:
    """One change: where, of what kind, and the expression before and after it."""

    number: int
    line: int
    last_line: int
    kind: str
    before: str
    after: str


def count(source: str) -> int:
    """How many mutations a module's text has."""
    return sum(1 for _ in sites(ast.parse(source)))


def mutated(source: str, *, number: int, path: str) -> CodeType:
    """Compile the module with one mutation in it, its lines numbered as they were."""
    tree = ast.parse(source)
    list(sites(tree))[number][2]()
    return compile(ast.fix_missing_locations(tree), path, "exec")


def told(source: str, number: int) -> Mutation:
    """Say what a mutation changes."""
    node, kind, change = list(sites(ast.parse(source)))[number]
    before = ast.unparse(node)
    change()
    after = ast.unparse(ast.fix_missing_locations(node))
    return Mutation(
        number=number,
        line=node.lineno,
        last_line=node.end_lineno or node.lineno,
        kind=kind,
        before=before,
        after=after if after != before else f"not ({before})",
    )


def sites(node: ast.AST) -> Iterator[Site]:
    """Nodes that can be changed in place, the kind of change, and what makes it."""
    yield from _changes(node)
    for name, value in ast.iter_fields(node):
        if name in NOT_COMPUTED:
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and not _docstring(child):
                yield from sites(child)


def _docstring(node: ast.AST) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def _changes(node: ast.AST) -> Iterator[Site]:
    match node:
        case ast.BinOp(op=op) | ast.AugAssign(op=op) | ast.BoolOp(op=op) if type(op) in OPERATORS:
            yield node, "operator", lambda: setattr(node, "op", OPERATORS[type(op)]())
        case ast.UnaryOp(op=ast.USub()):
            yield node, "sign", lambda: setattr(node, "op", ast.UAdd())
        case ast.UnaryOp(op=ast.Not() | ast.Invert() as op, operand=inner):
            yield node, "negation", lambda: setattr(node, "operand", ast.UnaryOp(op, inner))
        case ast.Compare(ops=ops):
            for k, op in enumerate(ops):
                new = OPERATORS[type(op)]()
                yield node, "comparison", lambda k=k, new=new: ops.__setitem__(k, new)
        case ast.Constant(value=value) if value is not None and value is not Ellipsis:
            kind, new = _constant(value)
            yield node, kind, lambda: setattr(node, "value", new)
        case ast.Name(id=name) if name in NAMES:
            yield node, "name", lambda: setattr(node, "id", NAMES[name])
        case ast.Attribute(attr=name) if name in NAMES:
            yield node, "name", lambda: setattr(node, "attr", NAMES[name])
        case ast.Expr(value=ast.Call()):
            yield node, "statement", lambda: setattr(node, "value", ast.Constant(None))
        case ast.If(test=test) | ast.IfExp(test=test) | ast.While(test=test):
            if not isinstance(test, ast.Compare | ast.UnaryOp):
                yield test, "condition", lambda: setattr(node, "test", ast.UnaryOp(ast.Not(), test))


def _constant(value: object) -> tuple[str, object]:
    if isinstance(value, bool):
        return "true or false", not value
    if isinstance(value, str):
        return "words", "XX" + value
    return "number", value + 1
