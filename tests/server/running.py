"""A quell serve under test: started on a free port with a state folder of its own, asked over http.client or a raw socket."""
import http.client
import json
import os
import pathlib
import re
import signal
import socket
import subprocess
import tempfile

PROGRAM = None  # set by server_test.py
ROOT = None

ADDRESS = re.compile(r"http://127\.0\.0\.1:(\d+)/([0-9a-f]{32})/\n")


class Server:
    """`with Server(...)`: running inside the block, ended with SIGTERM behind it. `state` may be shared by two in turn."""

    def __init__(self, *arguments, state=None):
        self.arguments = [str(a) for a in arguments]
        self.own_state = tempfile.TemporaryDirectory() if state is None else None
        self.state = pathlib.Path(state or self.own_state.name)

    def __enter__(self):
        environment = dict(os.environ, XDG_STATE_HOME=str(self.state))
        self.process = subprocess.Popen([PROGRAM, "serve", "--no-open", *self.arguments], env=environment, text=True,
                                        stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        line = self.process.stdout.readline()
        match = ADDRESS.fullmatch(line)
        if not match:
            self.process.kill()
            raise AssertionError(f"not an address: {line!r}; {self.process.communicate()}")
        self.port, self.token = int(match[1]), match[2]
        return self

    def __exit__(self, *_):
        if self.process.poll() is None:
            self.end(signal.SIGTERM)
        self.process.stdout.close()
        self.process.stderr.close()
        if self.own_state:
            self.own_state.cleanup()

    def end(self, with_signal):
        """Exit code, and what was still written to stdout and stderr."""
        self.process.send_signal(with_signal)
        out, err = self.process.communicate(timeout=10)
        return self.process.returncode, out, err

    def ask(self, method, name, body=None, headers=None, path=None):
        """Status, headers and bytes of the answer. `body` is sent as JSON unless it is bytes."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        all_headers = {}
        if body is not None:
            all_headers["Content-Type"] = "application/json"
            body = body if isinstance(body, bytes) else json.dumps(body).encode()
        all_headers.update(headers or {})
        try:
            connection.request(method, path or f"/{self.token}/{name}", body, all_headers)
            answer = connection.getresponse()
            return answer.status, dict(answer.getheaders()), answer.read()
        finally:
            connection.close()

    def get(self, name):
        return self.json("GET", name)

    def post(self, name, body):
        return self.json("POST", name, body)

    def json(self, method, name, body=None):
        """Status and the answer, which must be JSON."""
        status, headers, content = self.ask(method, name, body)
        assert headers["Content-Type"] == "application/json", headers
        assert headers["Cache-Control"] == "no-store", headers
        return status, json.loads(content)

    def raw(self, request, close_after=False, wait=10):
        """Everything that comes back for these bytes, until the server closes or `wait` seconds pass without any. A client that
        says that it will send no more is taken for one that has left."""
        with socket.create_connection(("127.0.0.1", self.port), timeout=wait) as connection:
            try:
                connection.sendall(request)
                if close_after:
                    connection.shutdown(socket.SHUT_WR)
            except OSError:
                pass  # the server may refuse and close before all is sent
            answer = b""
            try:
                while chunk := connection.recv(65536):
                    answer += chunk
            except (ConnectionResetError, TimeoutError, BrokenPipeError):
                pass
            return answer

    def head(self, method, name, *more, host=None):
        """Lines of a request up to the body."""
        lines = [f"{method} /{self.token}/{name} HTTP/1.1", f"Host: {host or f'127.0.0.1:{self.port}'}", *more, "", ""]
        return "\r\n".join(lines).encode()


def site_of(example):
    return ROOT / "examples" / example / "site.toml"


def text_of(example):
    return site_of(example).read_text(encoding="utf-8")


def files_of(example):
    return {path.name: path.read_text(encoding="utf-8") for path in site_of(example).parent.glob("*.csv")}


def on_page(example, **more):
    """The body with which the page asks about a site."""
    return {"text": text_of(example), "files": files_of(example), **more}


def program(*arguments, **environment):
    """A whole run of the command line, with a state folder of its own; an environment variable of None is taken away."""
    with tempfile.TemporaryDirectory() as state:
        variables = {**os.environ, "XDG_STATE_HOME": state, **environment}
        return subprocess.run([PROGRAM, *arguments], capture_output=True, text=True, check=False, timeout=60,
                              env={name: value for name, value in variables.items() if value is not None})
