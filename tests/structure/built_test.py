"""Every source is built: its name stands in a CMakeLists.txt of its folder or above, or in a script beside it that compiles
it. A test that no target names would never run."""
import pathlib
import sys

TREE = pathlib.Path(sys.argv[1])


def named(source):
    relative = source.relative_to(TREE)
    for above in [source.parent, *source.parent.parents]:
        lists = above / "CMakeLists.txt"
        if lists.exists() and source.relative_to(above).as_posix() in lists.read_text(encoding="utf-8"):
            return True
        if above == TREE:
            break
    return any(relative.name in other.read_text(encoding="utf-8") for other in source.parent.glob("*_test.py"))


unbuilt = [source for folder in ("core", "gui", "tests") for source in sorted((TREE / folder).rglob("*.cpp")) if not named(source)]
for source in unbuilt:
    print(f"{source.relative_to(TREE)}: no CMakeLists.txt names it, it is never built")
sys.exit(1 if unbuilt else 0)
