"""Values by their names that stay as they are."""

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import TypeVar

Value = TypeVar("Value")


class ByName(Mapping[str, Value]):
    """Values by their names, in the order given: read like a dict, equal to one that holds the same, and never changed."""

    __slots__ = ("_values",)
    _values: Mapping[str, Value]

    def __init__(self, values: Mapping[str, Value]) -> None:
        object.__setattr__(self, "_values", MappingProxyType(dict(values)))

    def __getitem__(self, name: str) -> Value:
        return self._values[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)

    def __hash__(self) -> int:
        return hash(frozenset(self._values.items()))

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"{type(self).__name__} does not change: {name} cannot be set")

    def __delattr__(self, name: str) -> None:
        raise AttributeError(f"{type(self).__name__} does not change: {name} cannot be taken away")

    def __reduce__(self) -> tuple[type["ByName[Value]"], tuple[dict[str, Value]]]:
        return type(self), (dict(self._values),)

    def __repr__(self) -> str:
        return f"<by name: {', '.join(self)}>"
