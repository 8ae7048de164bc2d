// quell serve [SITE] [--port N] [--no-open]: the page on this machine, for this user.
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>

#include <thread>

#include "quell/app/commands.h"
#include "quell/app/server/guard.h"
#include "quell/app/server/http.h"
#include "quell/app/server/routes.h"

extern char** environ;

namespace quell::app {
namespace {

constexpr int usual_port = 8470;
constexpr int usual_ports = 50;

/// The signals that end a server, taken by one thread that waits for them; every other thread inherits that they are blocked.
class EndSignals {
 public:
  EndSignals() {
    sigemptyset(&set_);
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) sigaddset(&set_, signal);
    pthread_sigmask(SIG_BLOCK, &set_, nullptr);
  }
  void wait() const {
    int signal = 0;
    sigwait(&set_, &signal);
  }

 private:
  sigset_t set_{};
};

/// Opens the address in the user's browser, apart from this process: neither its words nor Ctrl-C in the terminal concern it.
void open_browser(const std::string& address) {
  posix_spawnattr_t attributes;
  posix_spawnattr_init(&attributes);
  sigset_t none;
  sigemptyset(&none);
  posix_spawnattr_setsigmask(&attributes, &none);
  posix_spawnattr_setpgroup(&attributes, 0);
  posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETPGROUP);
  // The shell leaves xdg-open behind, so that nobody has to wait for it.
  std::string words[] = {"sh", "-c", "xdg-open \"$1\" >/dev/null 2>&1 </dev/null &", "sh", address};
  char* arguments[] = {words[0].data(), words[1].data(), words[2].data(), words[3].data(), words[4].data(), nullptr};
  pid_t child = 0;
  if (posix_spawnp(&child, "sh", nullptr, &attributes, arguments, environ) == 0) waitpid(child, nullptr, 0);
  posix_spawnattr_destroy(&attributes);
}

std::optional<int> bind(server::HttpServer& http, int wanted) {
  if (wanted > 0) return http.bind(wanted);
  for (int port = usual_port; port < usual_port + usual_ports; ++port)
    if (const auto bound = http.bind(port)) return bound;
  return http.bind(0);
}

server::Document::Result<void> open_document(server::Document& document, const std::string& site) {
  return site.empty() ? document.open_left_behind() : document.open_path(site);
}

/// Serves until a signal ends it.
void serve_until_told(server::HttpServer& http, const EndSignals& signals) {
  std::thread waiter([&] {
    signals.wait();
    http.stop();
  });
  http.run();
  // Where the server ended by itself: the signal is blocked in every thread, and only wakes the wait for it.
  pthread_kill(waiter.native_handle(), SIGTERM);  // NOLINT(bugprone-bad-signal-to-kill-thread)
  waiter.join();
}

}  // namespace

int serve(const ServeArguments& arguments) {
  const auto state = server::WorkingCopy::state_folder();
  if (!state) {
    fmt::print(stderr, "quell serve: there is no home folder to keep a working copy in; set HOME or XDG_STATE_HOME\n");
    return exit_no_result;
  }
  server::Document document(*state);
  if (const auto opened = open_document(document, arguments.site); !opened) {
    fmt::print(stderr, "quell serve: {}\n", opened.error().error);
    return opened.error().status == 400 ? exit_bad_input : exit_no_result;
  }
  const EndSignals signals;
  server::Routes routes(document);
  std::optional<server::Guard> guard;
  server::HttpServer http({
      .refuse =
          [&](const server::Request& request) {
            auto admitted = guard->admit(request);
            return admitted ? std::nullopt : std::optional(std::move(admitted.error()));
          },
      .answer =
          [&](const server::Request& request) {
            const auto admitted = guard->admit(request);
            return admitted ? routes.answer(request, *admitted) : admitted.error();
          },
  });
  const auto port = bind(http, arguments.port);
  if (!port) {
    fmt::print(stderr, "quell serve: port {} is not free; name another with --port, or none\n", arguments.port);
    return exit_no_result;
  }
  guard.emplace(server::random_token(), *port);
  fmt::print("{}\n", guard->address());
  std::fflush(stdout);
  if (arguments.open) open_browser(guard->address());
  serve_until_told(http, signals);
  return exit_done;
}

}  // namespace quell::app
