"""What should not be answered: strangers, broken requests, and bodies made to exhaust something. Behind each the same server must
still answer."""
import http.client
import json
import os
import pathlib
import signal
import socket
import subprocess
import tempfile
import threading
import time
import unittest

import running
from running import Server, on_page, program


class Hostile(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.server = cls.enterClassContext(Server())

    def tearDown(self):
        self.assertIsNone(self.server.process.poll(), "the server has ended")
        self.assertEqual(self.server.get("health")[0], 200)

    def refused(self, status, method="GET", name="health", body=None, headers=None, path=None):
        got, answered, content = self.server.ask(method, name, body, headers, path)
        self.assertEqual(got, status, (method, name or path, headers))
        error = json.loads(content)["error"]
        self.assertNotIn(self.server.token, content.decode() + str(answered))
        return error

    def first_status(self, request, **more):
        answer = self.server.raw(request, **more)
        self.assertTrue(answer.startswith(b"HTTP/1.1 "), answer[:80])
        return int(answer.split(None, 2)[1])

    # --- strangers

    def test_token(self):
        token = self.server.token
        flipped = ("0" if token[0] != "0" else "1") + token[1:]
        wrong = ["/", "/health", "/x/health", f"/{flipped}/health", f"/{token[:-1]}/health", f"/{token}0/health", f"//{token}/health",
                 f"/{token.upper() if token.upper() != token else 'A' * 32}/health", f"/{token}%00/health", f"/?{token}/",
                 f"/x/../{token}/health", f"/%2e/{token}/health", f"/{'a' * 5000}", "/favicon.ico", f"http://127.0.0.1/{token}/health"]
        errors = {self.refused(403, path=path) for path in wrong}
        self.assertEqual(errors, {"forbidden"})
        self.refused(403, "POST", body={}, path=f"/{flipped}/design")

    def test_tokens_differ_from_start_to_start(self):
        with Server() as other:
            self.assertNotEqual(other.token, self.server.token)
            self.refused(403, path=f"/{other.token}/health")

    def test_host_of_another_name_that_points_here(self):
        port = self.server.port
        for host in ("rebound.example", f"rebound.example:{port}", "127.0.0.1", f"127.0.0.1:{port + 1}", f"127.0.0.1:{port}.example",
                     f"127.0.0.1:{port}@x", f"[::1]:{port}", f"0.0.0.0:{port}", "", f"localhost.:{port}"):
            self.assertEqual(self.refused(403, headers={"Host": host}), "forbidden", host)
            self.refused(403, "POST", "design", on_page("01-gravity-dam"), headers={"Host": host})
        self.assertEqual(self.server.ask("GET", "health", headers={"Host": f"localhost:{port}"})[0], 200)
        two = self.server.head("GET", "health", "Host: rebound.example")
        self.assertEqual(self.first_status(two), 403)
        none = f"GET /{self.server.token}/health HTTP/1.1\r\n\r\n".encode()
        self.assertEqual(self.first_status(none), 403)

    def test_origin(self):
        port = self.server.port
        for origin in ("http://rebound.example", "null", f"https://127.0.0.1:{port}", f"http://127.0.0.1:{port + 1}", "http://127.0.0.1",
                       f"http://127.0.0.1:{port}.example", f"http://x@127.0.0.1:{port}"):
            self.assertEqual(self.refused(403, "POST", "tab", {"id": "x"}, {"Origin": origin}), "forbidden", origin)
            self.refused(403, headers={"Origin": origin})
        for origin in (f"http://127.0.0.1:{port}", f"http://localhost:{port}"):
            self.assertEqual(self.server.ask("POST", "tab", {"id": "x", "closed": True}, {"Origin": origin})[0], 200)

    def test_no_other_page_may_read_an_answer(self):
        _, headers, _ = self.server.ask("OPTIONS", "design", headers={"Access-Control-Request-Method": "POST"})
        self.assertFalse([name for name in headers if name.lower().startswith("access-control")])

    def test_media_type(self):
        for media in ("text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "", "application/jsonx",
                      "text/plain; application/json"):
            self.refused(415, "POST", "tab", {"id": "x"}, {"Content-Type": media})
        for media in ("application/json; charset=utf-8", "Application/JSON"):
            self.assertEqual(self.server.ask("POST", "tab", {"id": "x", "closed": True}, {"Content-Type": media})[0], 200)

    def test_only_this_machine_is_listened_to(self):
        with open("/proc/net/tcp", encoding="ascii") as table:
            listening = [row.split()[1] for row in table.readlines()[1:] if row.split()[3] == "0A"]
        ours = [address for address in listening if address.endswith(f":{self.server.port:04X}")]
        self.assertEqual(ours, [f"0100007F:{self.server.port:04X}"])

    # --- names

    def test_paths_do_not_climb(self):
        token = self.server.token
        for name in ("../health", "..", "../../etc/passwd", "%2e%2e/health", "%2e%2e%2f%2e%2e%2fetc%2fpasswd", "..%2fhealth", "/etc/passwd",
                     "assets/../index.html", "assets//x", "health%00", "health%00.js", "assets/%c0%ae%c0%ae/x", "..\\health", "h\u0065alth;x",
                     "assets/" + "a" * 3000, "document/../health", "./../x", "%", "%zz", "health%20"):
            self.refused(404, path=f"/{token}/{name}")
            self.refused(404, "POST", body={}, path=f"/{token}/{name}")
        self.assertEqual(self.first_status(f"GET /{token}/health\0 HTTP/1.1\r\nHost: 127.0.0.1:{self.server.port}\r\n\r\n".encode()) // 100, 4)

    # --- bodies

    def test_json_that_is_none(self):
        bad = [b"", b"{", b"[]", b"null", b"5", b'{"id":}', b'{"id":"x"} trailing', b'{"id":"\xff\xfe"}', b"\xff", b'{"id":"\xc0\xaf"}',
               b'{"id":"\xed\xa0\x80"}', b'{"id":"x","id":"y"}', b'{"id":"x","a":{"b":1,"b":2}}', b'{"id":"\\ud800"}', b"{'id':'x'}",
               b'{"id":"x\x00y"}', b'\x00{"id":"x"}', b"NaN", b'{"id":"x","n":NaN}', b'{"id":"x","n":1e999}', b"\xef\xbb\xbf"]
        for body in bad:
            self.refused(400, "POST", "tab", body)

    def test_deep_nesting(self):
        for deep in (33, 1000, 200_000, 4_000_000):
            error = self.refused(400, "POST", "tab", b'{"id":' + b"[" * deep)
            self.assertIn("deeper", error)
            self.refused(400, "POST", "tab", b'{"id":' * min(deep, 1_000_000))
        self.refused(400, "POST", "design", {"text": "a = " + "[" * 100_000, "files": "x"})
        status, answer = self.server.post("design", {"text": "a = " + "[" * 100_000})
        self.assertEqual((status, len(answer["problems"])), (200, 1))

    def test_texts_that_are_no_site(self):
        for text in ("\0", "\u0001" * 100, "\ud7ff\ue000" * 1000, "a" * 1_000_000, "=" * 10_000, "[a]\n" * 10_000, "\r" * 1000, '"' * 999):
            status, answer = self.server.post("design", {"text": text, "files": {"x": text}})
            self.assertEqual(status, 200)
            self.assertTrue(answer["problems"])

    def test_body_too_large(self):
        self.refused(413, "POST", "design", {"text": "#" * (8 << 20)})
        status, _ = self.server.post("design", {"text": "#" * ((8 << 20) - 100)})
        self.assertEqual(status, 200)

    def test_body_that_claims_to_be_enormous(self):
        for claimed in ("68719476736", "9" * 15):
            head = self.server.head("POST", "design", "Content-Type: application/json", f"Content-Length: {claimed}")
            start = time.monotonic()
            self.assertEqual(self.first_status(head + b"{" * 100), 400)
            self.assertLess(time.monotonic() - start, 8)

    def test_framing(self):
        json_type = "Content-Type: application/json"
        for lines, expected in (((json_type, "Transfer-Encoding: chunked"), 411), ((json_type,), 411),
                                ((json_type, "Content-Length: -1"), 400), ((json_type, "Content-Length: 1e3"), 400),
                                ((json_type, "Content-Length: 2", "Content-Length: 50"), 400), ((json_type, "Content-Length: " + "9" * 40), 400),
                                ((json_type, "Content-Length: 2", "Content-Encoding: gzip"), 415),
                                ((json_type, "Content-Length: 2", "Transfer-Encoding: chunked"), 411)):
            answer = self.server.raw(self.server.head("POST", "tab", *lines) + b'{}')
            self.assertEqual(int(answer.split(None, 2)[1]), expected, lines)
            self.assertIn(b"Connection: close", answer)
            self.assertNotIn(b"Keep-Alive", answer)

    def test_ranges(self):
        whole = self.server.ask("GET", "health")[2]
        for ranges in ("bytes=0-0", "bytes=5-", "bytes=9999-", "bytes=-3", "bytes=" + ",".join(["0-"] * 1000)):
            status, _, content = self.server.ask("GET", "health", headers={"Range": ranges})
            self.assertEqual((status, content), (200, whole))
        for ranges in ("bytes=x", "bytes=5-2"):
            self.assertEqual(self.first_status(self.server.head("GET", "health", f"Range: {ranges}")), 416)

    def test_nothing_behind_a_refused_request_is_answered(self):
        smuggled = self.server.head("GET", "health") * 200
        for first in (self.server.head("POST", "design", "Content-Type: text/plain", f"Content-Length: {len(smuggled)}"),
                      self.server.head("GET", "health", f"Content-Length: {len(smuggled)}"),
                      self.server.head("GET", "health", "Transfer-Encoding: chunked"),
                      self.server.head("GET", "health", host="rebound.example"), b"GARBAGE\r\n\r\n", b"\r\n\r\n", b"\0\0\0\0\r\n"):
            answer = self.server.raw(first + smuggled)
            self.assertEqual(answer.count(b"HTTP/1.1 "), 1, answer[:300])
            self.assertNotIn(b"version", answer)

    def test_truncated(self):
        head = self.server.head("POST", "design", "Content-Type: application/json", "Content-Length: 1000")
        self.assertEqual(self.first_status(head + b'{"text":"'), 400)
        for cut in range(1, len(head), 7):
            self.assertEqual(self.server.raw(head[:cut], close_after=True), b"")

    def test_pipelined_requests(self):
        # The library drops what comes before its answer; browsers wait for it.
        body = b'{"id":"p","closed":true}'
        one = self.server.head("POST", "tab", "Content-Type: application/json", f"Content-Length: {len(body)}") + body
        for count in (2, 20, 200):
            self.assertTrue(self.server.raw(one * count, wait=1).startswith(b"HTTP/1.1 200"))

    def test_pipelined_garbage(self):
        good = self.server.head("GET", "health")
        answer = self.server.raw(good + b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03" * 1000 + b"\r\n" + good, wait=1)
        self.assertTrue(answer.startswith(b"HTTP/1.1 200"))
        self.assertEqual(answer.count(b"HTTP/1.1 200"), 1)

    def test_long_lines(self):
        token, port = self.server.token, self.server.port
        self.assertIn(self.first_status(f"GET /{'a' * 9000} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n".encode()), (403, 414))
        self.server.raw(b"GET /" + b"a" * 20_000_000 + b" HTTP/1.1\r\n\r\n")
        self.server.raw(f"GET /{token}/health HTTP/1.1\r\nX: {'a' * 1_000_000}\r\n\r\n".encode())
        self.server.raw(f"GET /{token}/health HTTP/1.1\r\n".encode() + b"X: a\r\n" * 100_000 + b"\r\n", wait=1)

    # --- clients

    def test_slow_clients_hold_nobody_up(self):
        slow = []
        head = self.server.head("POST", "design", "Content-Type: application/json", "Content-Length: 100000")
        for i in range(12):
            connection = socket.create_connection(("127.0.0.1", self.server.port), timeout=20)
            connection.sendall(head[:40] if i % 2 else head + b"{")
            self.addCleanup(connection.close)
            slow.append(connection)
        start = time.monotonic()
        self.assertEqual(self.server.get("health")[0], 200)
        self.assertLess(time.monotonic() - start, 1.0)
        for connection in slow:  # each gets its answer, or is hung up on, when its time is over
            connection.recv(1000)

    def test_a_burst_of_connections_does_not_wait(self):
        start = time.monotonic()
        burst = [socket.create_connection(("127.0.0.1", self.server.port), timeout=20) for _ in range(30)]
        self.assertEqual(self.server.get("health")[0], 200)
        self.assertLess(time.monotonic() - start, 0.9)
        for connection in burst:
            connection.close()

    def test_clients_that_leave_before_the_answer(self):
        body = json.dumps(on_page("05-gated-dam")).encode()
        head = self.server.head("POST", "design", "Content-Type: application/json", f"Content-Length: {len(body)}")
        for _ in range(8):
            connection = socket.create_connection(("127.0.0.1", self.server.port), timeout=20)
            connection.sendall(head + body)
            connection.close()

    def test_many_at_once_get_the_same_answer(self):
        body, answers = on_page("01-gravity-dam"), []

        def ask():
            answers.append(self.server.post("design", body)[1]["result"])

        askers = [threading.Thread(target=ask) for _ in range(12)]
        for asker in askers:
            asker.start()
        for asker in askers:
            asker.join()
        self.assertEqual(len(answers), 12)
        self.assertTrue(all(answer == answers[0] for answer in answers))


    def test_nothing_is_left_open(self):
        def open_files():
            return len(list(pathlib.Path(f"/proc/{self.server.process.pid}/fd").iterdir()))

        self.server.get("health")
        time.sleep(0.1)
        before = open_files()
        for _ in range(100):
            self.server.get("health")
            self.server.ask("GET", None, path="/x")
            self.server.raw(b"GARBAGE\r\n\r\n")
        time.sleep(0.1)
        self.assertLessEqual(open_files(), before + 2)


class Program(unittest.TestCase):
    def test_the_browser_is_given_the_address_and_nothing_else(self):
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            browser = folder / "xdg-open"
            browser.write_text(f"#!/bin/sh\nls /proc/self/fd > {folder}/files\necho chatter\necho \"$@\" > {folder}/given.part\n"
                               f"mv {folder}/given.part {folder}/given\nsleep 5\n", encoding="utf-8")
            browser.chmod(0o755)
            environment = dict(os.environ, PATH=f"{folder}:{os.environ['PATH']}", XDG_STATE_HOME=name)
            with subprocess.Popen([running.PROGRAM, "serve"], env=environment, text=True, stdout=subprocess.PIPE,
                                  stderr=subprocess.PIPE) as process:
                address = process.stdout.readline()
                deadline = time.monotonic() + 10
                while not (folder / "given").exists() and time.monotonic() < deadline:
                    time.sleep(0.01)
                process.send_signal(signal.SIGTERM)
                start = time.monotonic()
                rest, errors = process.communicate(timeout=10)
                self.assertLess(time.monotonic() - start, 2, "the browser holds the terminal")
            self.assertEqual((process.returncode, rest, errors), (0, "", ""))
            self.assertEqual((folder / "given").read_text(encoding="utf-8"), address)
            # Its own three, and the folder that ls reads.
            self.assertLessEqual(set((folder / "files").read_text(encoding="utf-8").split()), {"0", "1", "2", "3"})

    def test_one_line_and_a_clean_end(self):
        for with_signal in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
            with Server() as server:
                waiting = http.client.HTTPConnection("127.0.0.1", server.port, timeout=10)  # an idle connection holds nothing up
                waiting.request("GET", f"/{server.token}/health")
                waiting.getresponse().read()
                start = time.monotonic()
                self.assertEqual(server.end(with_signal), (0, "", ""))
                self.assertLess(time.monotonic() - start, 2.0)
                waiting.close()

    def test_ports(self):
        with Server() as first, Server() as second, Server("--port", "0") as third:
            self.assertEqual(len({first.port, second.port, third.port}), 3)
            done = program("serve", "--no-open", "--port", str(first.port))
            self.assertEqual((done.returncode, done.stdout), (3, ""))
            self.assertIn(str(first.port), done.stderr)
        with Server("--port", str(first.port)) as again:
            self.assertEqual(again.port, first.port)
        for port in ("-1", "65536", "x"):
            self.assertEqual(program("serve", "--no-open", "--port", port).returncode, 2)
