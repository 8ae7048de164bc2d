// The one place that knows the HTTP library: sockets, framing, limits. It hands whole requests over and sends answers back.
//
// Bound to 127.0.0.1 alone. A request whose framing is unusual (chunked, compressed, without length) is refused, and its
// connection closed, since nothing after it can be trusted.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace quell::app::server {

inline constexpr std::size_t largest_body = 8u << 20u;  ///< bytes

struct Request {
  std::string method{};
  std::string target{};               ///< path and query as sent, before any decoding
  std::vector<std::string> host{};    ///< every header of that name
  std::vector<std::string> origin{};  ///< every header of that name
  std::string media_type{};           ///< of the body
  std::string accept_encoding{};
  std::string body{};
};

struct Answer {
  int status = 200;
  std::string body{};
  std::string media = "application/json";
  bool gzipped = false;    ///< `body` is
  bool has_style = false;  ///< a document of its own with its style in it; it runs no script and loads nothing
  bool immutable = false;  ///< the name changes with the content: browsers may keep it
  std::string location{};  ///< of a redirection
  std::string allow{};     ///< methods that would do, with 405
};

/// {"error": message}
Answer error_answer(int status, const std::string& message);

struct Handlers {
  std::function<std::optional<Answer>(const Request&)> refuse;  ///< before the body is read; the connection is then closed
  std::function<Answer(const Request&)> answer;                 ///< called from many threads; may throw
};

class HttpServer {
 public:
  explicit HttpServer(Handlers handlers);
  ~HttpServer();
  HttpServer(const HttpServer&) = delete;
  HttpServer& operator=(const HttpServer&) = delete;

  /// Takes the port on 127.0.0.1; 0: any free one. The port taken, or nothing where it is not free. Connections wait from here
  /// on.
  std::optional<int> bind(int port);
  /// Answers until `stop`; requests under way are finished.
  void run();
  /// From any thread, also before `run`.
  void stop();

 private:
  struct Library;
  std::unique_ptr<Library> library_;
};

}  // namespace quell::app::server
