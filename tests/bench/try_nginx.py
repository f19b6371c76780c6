"""Tries the README's nginx settings on a published site: packing, keeping, types, policy, moved pages, pages not there.

``python tests/bench/try_nginx.py [DEST]`` publishes the tests' collection to a folder that goes away, unless DEST is a site that
is published already, serves it on 127.0.0.1 by Debian's nginx (with libnginx-mod-http-brotli-static), and asks for a
page of each sort. It says what came, and ends with 1 if anything is not as it should be.
"""

from __future__ import annotations

import gzip
import http.client
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import brotli  # type: ignore[import-untyped]

sys.path.insert(0, str(Path(__file__).parent.parent))

from project import ROOT, copy_of_project

SESSION = "/books/cliff-house-lift/session-2.html"
LONG = f"{'a-long-way/' * 12}{'and-on-' * 30}end"
"""A page that was renamed, of 350 letters; nginx by itself takes some fifty."""
MOVED = "".join(
    f"  - {{from: {was}.md, to: books/cliff-house-lift/home-1.md, since: 2027-01-11}}\n"
    for was in ("books/cliff-house-lift/home-9", LONG)
)
SVG = "/books/cliff-house-lift/cover.svg"
FRAME = """\
include /etc/nginx/modules-enabled/*.conf;
daemon off;
pid {folder}/nginx.pid;
error_log {folder}/error.log;
events {{ worker_connections 64; }}
http {{
    include /etc/nginx/mime.types;
    default_type application/octet-stream;
    access_log off;
    client_body_temp_path {folder}/body; proxy_temp_path {folder}/proxy; fastcgi_temp_path {folder}/fastcgi;
    uwsgi_temp_path {folder}/uwsgi; scgi_temp_path {folder}/scgi;
{settings}
}}
"""
Answer = tuple[int, dict[str, str], bytes]


def main() -> int:
    """Publishes, serves, asks; 0 if all is as it should be."""
    nginx = shutil.which("nginx") or "/usr/sbin/nginx"
    if not Path(nginx).exists():
        print("There is no nginx here: apt-get install nginx libnginx-mod-http-brotli-static")
        return 2
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        folder.chmod(0o755)  # nginx's workers are another user
        dest = Path(sys.argv[1]).absolute() if len(sys.argv) > 1 else published(folder)
        with served(nginx, folder, dest) as port:
            wrong = [line for line in asked(port, dest) if line]
    print("\n".join(wrong) or "All as it should be.")
    return 1 if wrong else 0


def published(folder: Path) -> Path:
    """The tests' collection with two pages moved, and a calendar beside it, published."""
    project = copy_of_project(folder / "project")
    settings = project / "site_data/site.yaml"
    settings.write_text(settings.read_text("utf-8").replace("print_sheets: true", "print_sheets: false"), "utf-8")
    (project / "site_data/moved.yaml").write_text(f"moved:\n{MOVED}", encoding="utf-8")
    dest = folder / "lessons"
    command = [sys.executable, "-m", "storymaths", "publish", str(dest)]
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks")}
    subprocess.run(command, cwd=project, env=environment, check=True)
    (dest / "plan.ics").write_text("BEGIN:VCALENDAR\n", encoding="utf-8")
    for file in (*dest.parent.rglob("*"), dest.parent):
        file.chmod(0o755 if file.is_dir() else 0o644)
    return dest


@contextmanager
def served(nginx: str, folder: Path, dest: Path) -> Iterator[int]:
    """nginx with the README's settings over ``dest``; yields its port."""
    found = re.search(r"```nginx\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    assert found, "the README has no settings for nginx"
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port: int = free.getsockname()[1]
    settings = found.group(1).replace("/srv/www/lessons", str(dest)).replace("listen 80;", f"listen 127.0.0.1:{port};")
    (folder / "nginx.conf").write_text(FRAME.format(folder=folder, settings=settings), encoding="utf-8")
    command = [nginx, "-c", str(folder / "nginx.conf"), "-e", str(folder / "error.log")]
    subprocess.run([*command, "-t", "-q"], check=True)
    server = subprocess.Popen(command)
    try:
        for _ in range(100):
            with socket.socket() as knock:
                if knock.connect_ex(("127.0.0.1", port)) == 0:
                    break
            time.sleep(0.05)
        yield port
    finally:
        server.terminate()
        server.wait()


def ask(port: int, path: str, **headers: str) -> Answer:
    """One request; header names in small letters."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
    connection.request("GET", path, headers={name.replace("_", "-"): value for name, value in headers.items()})
    answer = connection.getresponse()
    data = answer.read()
    connection.close()
    return answer.status, {name.lower(): value for name, value in answer.getheaders()}, data


def asked(port: int, dest: Path) -> Iterator[str]:
    """What is not as it should be, a line each; what came is printed."""
    plain = (dest / SESSION[1:]).read_bytes()
    for coding, unpacked in (
        ("", bytes),
        ("gzip", gzip.decompress),
        ("br", brotli.decompress),
        ("gzip, br", brotli.decompress),
    ):
        status, headers, data = ask(port, SESSION, Accept_Encoding=coding)
        print(f"{status} {SESSION} as {headers.get('content-encoding', 'plain')}: {len(data):,} bytes")
        yield _unless((status, unpacked(data)) == (200, plain), f"{coding or 'plain'}: not the page")
        yield _unless(
            headers.get("content-encoding", "") == coding.rpartition(" ")[2], f"{coding}: came as something else"
        )
        yield _unless("accept-encoding" in headers.get("vary", "").lower(), f"{coding}: no Vary: Accept-Encoding")
    status, headers, _ = ask(port, SESSION)
    yield _unless(headers.get("content-type") == "text/html; charset=utf-8", f"type: {headers.get('content-type')}")
    yield _unless(headers.get("content-security-policy") == "frame-ancestors 'self'", "no policy on who may frame")
    yield _unless(headers.get("x-content-type-options") == "nosniff", "no nosniff")
    yield _unless("set-cookie" not in headers, "a cookie")
    status, _, data = ask(port, SESSION, If_None_Match=headers["etag"])
    print(f"{status} {SESSION} again, with its tag: {len(data)} bytes")
    yield _unless(status == 304, "fetched again although it has not changed")
    for path, kind in (
        (SVG, "image/svg+xml"),
        ("/coverage/collection.csv", "text/csv"),
        ("/plan.ics", "text/calendar"),
    ):
        status, headers, _ = ask(port, path)
        told, policy = headers.get("content-type", ""), headers.get("content-security-policy", "")
        print(f"{status} {path}: {told}; {policy}")
        yield _unless(status == 200 and told.partition(";")[0] == kind, f"{path}: another type")
        yield _unless(("default-src 'none'" in policy) == (path == SVG), f"{path}: another policy")
        yield _unless("x-content-type-options" in headers and "cache-control" in headers, f"{path}: headers left out")
    fragment = next((dest / "pagefind/fragment").iterdir()).name
    kept = {
        SESSION: "no-cache", "/look/site.css": "no-cache", "/open-data/catalogue.json": "no-cache",
        "/pagefind/pagefind-entry.json": "no-cache",
        f"/pagefind/fragment/{fragment}": "public, max-age=31536000, immutable", "/fonts/text.woff2": "public, max-age=604800",
    }  # fmt: skip
    for path, rule in kept.items():
        status, headers, _ = ask(port, path)
        print(f"{status} {path}: {headers.get('content-type')}; {headers.get('cache-control')}")
        yield _unless((status, headers.get("cache-control")) == (200, rule), f"{path}: kept by another rule")
    status, headers, data = ask(port, "/books/nowhere.html")
    print(f"{status} /books/nowhere.html: {len(data):,} bytes")
    yield _unless(status == 404 and b"There is no such page" in data, "not our own page for what is not there")
    yield _unless("content-security-policy" in headers, "no policy on the page for what is not there")
    for was in ("books/cliff-house-lift/home-9", LONG):
        if (dest / f"{was}.html").exists():
            status, headers, _ = ask(port, f"/{was}.html")
            print(f"{status} /{was}.html to {headers.get('location')}")
            led = status == 301 and headers.get("location", "").endswith("/home-1.html")
            yield _unless(led, "a moved page is not led on")
    for path in ("/../lessons.releases/1.json", "/..%2flessons.releases/1.json", "/.git/config"):
        status, _, _ = ask(port, path)
        yield _unless(status in (400, 403, 404), f"{path}: {status}")


def _unless(right: bool, wrong: str) -> str:
    return "" if right else f"WRONG: {wrong}"


if __name__ == "__main__":
    sys.exit(main())
