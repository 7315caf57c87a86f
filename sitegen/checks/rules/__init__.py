"""One module a topic; importing this package imports them all, and an error in one stops the program."""

from importlib import import_module
from pkgutil import iter_modules

for _module in iter_modules(__path__):
    import_module(f"{__name__}.{_module.name}")
