#include "quell/app/server/http.h"

#include <httplib.h>
#include <netinet/in.h>
#include <sys/socket.h>

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <thread>

namespace quell::app::server {
namespace {

constexpr std::size_t most_drained =
    64u << 20u;                      ///< bytes of a body too large that are still read, so that its sender hears why
constexpr std::size_t threads = 64;  ///< a waiting connection holds one; a browser opens six
constexpr std::size_t requests_of_a_connection = 100000;
constexpr time_t idle_seconds = 20;  ///< longer than the heartbeat of a tab, so that its connection stays
constexpr time_t read_seconds = 5;   ///< between two pieces of a request

/// Only what the page needs, from this address alone; nobody frames it, and its address is told to no other site.
const httplib::Headers safe_headers{
    {"Content-Security-Policy",
     "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'"},
    {"X-Content-Type-Options", "nosniff"},
    {"Referrer-Policy", "no-referrer"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Cross-Origin-Opener-Policy", "same-origin"},
};

/// For a document with its style in it.
constexpr const char* policy_of_document =
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// Told apart from any header of a client, which arrives in the request.
constexpr const char* closing_mark = "X-Quell-Closing";

std::vector<std::string> all_of(const httplib::Request& request, const char* name) {
  std::vector<std::string> values;
  for (std::size_t i = 0; i < request.get_header_value_count(name); ++i) values.push_back(request.get_header_value(name, i));
  return values;
}

Request plain(const httplib::Request& request) {
  return {.method = request.method,
          .target = request.target,
          .host = all_of(request, "Host"),
          .origin = all_of(request, "Origin"),
          .media_type = request.get_header_value("Content-Type"),
          .accept_encoding = request.get_header_value("Accept-Encoding")};
}

/// What makes the end of a request unsure, or would let a small body grow large.
std::optional<Answer> framing_fault(const httplib::Request& request) {
  const auto lengths = all_of(request, "Content-Length");
  if (request.has_header("Transfer-Encoding")) return error_answer(411, "send the body with a Content-Length, not in chunks");
  if (request.has_header("Content-Encoding")) return error_answer(415, "send the body as it is, not compressed");
  if (lengths.size() > 1) return error_answer(400, "more than one Content-Length");
  if (lengths.empty()) {
    if (request.method == "POST") return error_answer(411, "the body needs a Content-Length");
    return std::nullopt;
  }
  const std::string& length = lengths.front();
  const bool is_number = !length.empty() && length.size() < 16 && length.find_first_not_of("0123456789") == std::string::npos;
  if (!is_number) return error_answer(400, "Content-Length is not a number");
  if (request.method != "POST" && std::stoull(length) > 0) return error_answer(400, "only POST takes a body");
  return std::nullopt;
}

/// Answers go out through a provider of known length: the library then sends the bytes as they are. A provider that fails once
/// it has sent what it was asked for makes the library close the connection.
void send(Answer answer, bool closing, httplib::Response& response) {
  response.status = answer.status;
  response.set_header("Cache-Control", answer.immutable ? "private, max-age=31536000, immutable" : "no-store");
  if (answer.gzipped) response.set_header("Content-Encoding", "gzip");
  if (!answer.location.empty()) response.set_header("Location", answer.location);
  if (!answer.allow.empty()) response.set_header("Allow", answer.allow);
  if (answer.has_style) {
    response.headers.erase("Content-Security-Policy");
    response.set_header("Content-Security-Policy", policy_of_document);
  }
  if (closing) response.set_header(closing_mark, "yes");
  const std::size_t size = answer.body.size();
  response.set_content_provider(size, answer.media,
                                [body = std::make_shared<const std::string>(std::move(answer.body)), closing](
                                    std::size_t offset, std::size_t length, httplib::DataSink& sink) {
                                  if (offset >= body->size()) return false;
                                  length = std::min(length, body->size() - offset);
                                  return sink.write(body->data() + offset, length) && !closing;
                                });
}

/// The library writes these headers as if every connection went on.
void say_closing(const httplib::Request&, httplib::Response& response) {
  if (response.headers.erase(closing_mark) == 0) return;
  response.headers.erase("Connection");
  response.headers.erase("Keep-Alive");
  response.set_header("Connection", "close");
}

/// What the library refuses by itself: a request line or header that it cannot read, an address too long.
httplib::Server::HandlerResponse refuse_unreadable(const httplib::Request&, httplib::Response& response) {
  if (response.content_length_ > 0) return httplib::Server::HandlerResponse::Unhandled;
  send(error_answer(response.status,
                    response.status == 414 ? "the address is too long" : "this is not a request that can be read"),
       true, response);
  return httplib::Server::HandlerResponse::Handled;
}

/// Connections that wait for their next request would hold their threads; told that no more comes, they end.
void hang_up(int port) {
  std::error_code error;
  std::vector<int> descriptors;
  for (const auto& entry : std::filesystem::directory_iterator("/proc/self/fd", error))
    descriptors.push_back(std::atoi(entry.path().filename().c_str()));
  for (const int descriptor : descriptors) {
    sockaddr_in local{};
    socklen_t size = sizeof local;
    if (::getsockname(descriptor, reinterpret_cast<sockaddr*>(&local), &size) == 0 && local.sin_family == AF_INET &&
        ntohs(local.sin_port) == port)
      ::shutdown(descriptor, SHUT_RD);
  }
}

}  // namespace

Answer error_answer(int status, const std::string& message) {
  const nlohmann::json json{{"error", message}};
  return {.status = status, .body = json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace) + "\n"};
}

struct HttpServer::Library {
  explicit Library(Handlers given) : handlers(std::move(given)) {}

  Handlers handlers;
  httplib::Server server;
  int port = 0;
  socket_t listener = INVALID_SOCKET;
  std::atomic<bool> stopping{false};
  std::atomic<bool> running{false};

  Answer answer(const Request& request) const try { return handlers.answer(request); } catch (const std::bad_alloc&) {
    return error_answer(500, "there is not enough memory for this");
  } catch (const std::exception& error) {
    return error_answer(500, std::string("a fault of ours: ") + error.what());
  }

  httplib::Server::HandlerResponse before_body(const httplib::Request& request, httplib::Response& response) const {
    // Answers are sent whole, as a server may. The library hands us its own request as const, and would cut them up.
    const_cast<httplib::Request&>(request).ranges.clear();
    const Request asked = plain(request);
    auto refusal = handlers.refuse(asked);
    if (!refusal) refusal = framing_fault(request);
    if (refusal) {
      send(std::move(*refusal), true, response);
    } else if (request.method == "POST") {
      return httplib::Server::HandlerResponse::Unhandled;
    } else {
      send(answer(asked), false, response);
    }
    return httplib::Server::HandlerResponse::Handled;
  }

  void with_body(const httplib::Request& request, httplib::Response& response, const httplib::ContentReader& read) const {
    Request asked = plain(request);
    std::size_t size = 0;
    const bool whole = read([&](const char* data, std::size_t length) {
      size += length;
      if (size <= largest_body) asked.body.append(data, length);
      return size <= most_drained;
    });
    if (size > largest_body) return send(error_answer(413, "the body is larger than 8 MB"), !whole, response);
    if (!whole) return send(error_answer(400, "the body ended early"), true, response);
    send(answer(asked), false, response);
  }

  void prepare() {
    server.new_task_queue = [] { return new httplib::ThreadPool(threads); };  // the library owns it
    server.set_tcp_nodelay(true);
    server.set_keep_alive_max_count(requests_of_a_connection);
    server.set_keep_alive_timeout(idle_seconds);
    server.set_read_timeout(read_seconds);
    server.set_write_timeout(read_seconds);
    server.set_payload_max_length(static_cast<std::size_t>(-1));  // `with_body` counts
    // Not SO_REUSEPORT, with which a second server could take the same port.
    server.set_socket_options([this](socket_t made) {
      const int yes = 1;
      ::setsockopt(made, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
      listener = made;
    });
    server.set_default_headers(safe_headers);
    server.set_error_handler(httplib::Server::HandlerWithResponse(refuse_unreadable));
    server.set_post_routing_handler(say_closing);
    server.set_pre_routing_handler([this](const auto& request, auto& response) { return before_body(request, response); });
    server.Post("/.*", httplib::Server::HandlerWithContentReader([this](const auto& request, auto& response, const auto& read) {
                  with_body(request, response, read);
                }));
  }
};

HttpServer::HttpServer(Handlers handlers) : library_(std::make_unique<Library>(std::move(handlers))) {
  library_->prepare();
}

HttpServer::~HttpServer() = default;

std::optional<int> HttpServer::bind(int port) {
  constexpr const char* loopback = "127.0.0.1";
  if (port == 0) {
    library_->port = library_->server.bind_to_any_port(loopback);
  } else {
    library_->port = library_->server.bind_to_port(loopback, port) ? port : -1;
  }
  if (library_->port <= 0) return std::nullopt;
  // The library lets five connections wait; the sixth of a burst would try again after a second.
  ::listen(library_->listener, SOMAXCONN);
  return library_->port;
}

void HttpServer::run() {
  library_->running = true;
  if (!library_->stopping) library_->server.listen_after_bind();
  library_->running = false;
}

void HttpServer::stop() {
  library_->stopping = true;
  // The library forgets a stop that comes before it listens.
  while (library_->running && !library_->server.is_running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
  library_->server.stop();
  hang_up(library_->port);
}

}  // namespace quell::app::server
