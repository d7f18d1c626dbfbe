"""What of Python, numpy and boomsim no live page needs: it makes the file smaller by a third."""

STDLIB_UNUSED = (
    # other windows, machines and networks
    *("asyncio/proactor", "asyncio/windows", "curses/", "ctypes/macholib/", "dbm/", "email/"),
    *("ensurepip/", "http/", "idlelib/", "lib2to3/", "msilib/", "multiprocessing/", "sqlite3/"),
    *("tkinter/", "turtledemo/", "urllib/request", "urllib/robotparser", "venv/", "wsgiref/"),
    *("cgi", "ftplib", "imaplib", "mailbox", "nntplib", "poplib", "smtplib"),
    *("socketserver", "ssl", "telnetlib", "webbrowser", "xmlrpc/", "netrc", "uuid"),
    # other formats
    *("_strptime", "aifc", "bdb", "binhex", "chunk", "colorsys", "configparser", "csv", "imghdr"),
    *("logging/config", "logging/handlers", "lzma", "mimetypes", "plistlib", "quopri", "sndhdr"),
    *("sunau", "tarfile", "uu", "wave", "xdrlib", "xml/", "zipapp", "zoneinfo/", "stringprep"),
    # tools for people who write programs
    *(
        "_aix",
        "_osx",
        "_pydecimal",
        "_pyio",
        "_pydatetime",
        "__phello__",
        "cProfile",
        "cmd.",
        "code.",
    ),
    *("compileall", "concurrent/futures/process", "distutils/", "doctest", "optparse", "pdb"),
    *("pickletools", "profile", "pstats", "pyclbr", "pydoc", "sched", "statistics", "symtable"),
    *("tabnanny", "test/", "this", "timeit", "trace.", "turtle", "unittest/", "antigravity"),
    # other alphabets
    *("encodings/big5", "encodings/charmap", "encodings/cp1", "encodings/cp2", "encodings/cp3"),
    *("encodings/cp5", "encodings/cp7", "encodings/cp8", "encodings/cp9", "encodings/cp41"),
    *("encodings/euc", "encodings/gb", "encodings/h", "encodings/iso", "encodings/jo"),
    *("encodings/ko", "encodings/mac", "encodings/pt", "encodings/s", "encodings/ti"),
)
"""How paths in Python's own library begin."""

NUMPY_UNUSED = (
    *("numpy/_core/tests/", "numpy/_pyinstaller/", "numpy/distutils/", "numpy/f2py/", "numpy/fft/"),
    *("numpy/polynomial/", "numpy/random/", "numpy/testing/", "numpy/tests/"),
)
"""How paths in numpy begin that it opens when they are asked for, and boomsim never asks."""

ROOMS_UNUSED = ("classroom/", "cli/", "lessons/", "papers/")
"""Commands, examinations, lessons and what serves them have no place in the explorer."""
