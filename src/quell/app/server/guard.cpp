#include "quell/app/server/guard.h"

#include <fmt/format.h>
#include <sys/random.h>

#include <algorithm>
#include <array>
#include <set>
#include <stdexcept>

namespace quell::app::server {
namespace {

constexpr std::size_t longest_name = 200;

bool is_name_character(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '.' ||
         c == '/';
}

/// Every name that there is reads this way; the rest is an attempt to climb out.
bool is_plain_name(std::string_view name) {
  return name.size() <= longest_name && std::all_of(name.begin(), name.end(), is_name_character) &&
         name.find("..") == std::string_view::npos && name.find("//") == std::string_view::npos;
}

bool is_json(std::string_view media_type) {
  media_type = media_type.substr(0, media_type.find(';'));
  while (!media_type.empty() && media_type.back() == ' ') media_type.remove_suffix(1);
  constexpr std::string_view json = "application/json";
  return std::equal(media_type.begin(), media_type.end(), json.begin(), json.end(),
                    [](char a, char b) { return (a >= 'A' && a <= 'Z' ? static_cast<char>(a - 'A' + 'a') : a) == b; });
}

Answer forbidden() {
  return error_answer(403, "forbidden");
}

std::string tab_of(std::string_view query) {
  constexpr std::string_view key = "tab=";
  return query.substr(0, key.size()) == key ? std::string(query.substr(key.size())) : std::string();
}

struct BodyFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Watches the parser: stops it at the first key that comes twice, and before nesting could exhaust a stack.
class BodyWatch {
 public:
  void event(nlohmann::json::parse_event_t event, const nlohmann::json& parsed) {
    using Event = nlohmann::json::parse_event_t;
    switch (event) {
      case Event::object_start:
      case Event::array_start:
        if (keys_.size() >= deepest) throw BodyFault(fmt::format("the body is nested deeper than {}", deepest));
        keys_.emplace_back();
        break;
      case Event::object_end:
      case Event::array_end: keys_.pop_back(); break;
      case Event::key:
        if (!keys_.back().insert(parsed.get<std::string>()).second)
          throw BodyFault(fmt::format("the key '{}' comes twice in one object", parsed.get<std::string>().substr(0, 60)));
        break;
      case Event::value: break;
    }
  }

 private:
  static constexpr std::size_t deepest = 32;
  std::vector<std::set<std::string>> keys_;
};

}  // namespace

std::string random_token() {
  std::array<unsigned char, 16> bytes{};
  if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size()))
    throw std::runtime_error("the system gives no random numbers");
  return fmt::format("{:02x}", fmt::join(bytes, ""));
}

bool same_bytes(std::string_view given, std::string_view expected) {
  unsigned difference = given.size() == expected.size() ? 0u : 1u;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    const char c = i < given.size() ? given[i] : '\0';
    difference |= static_cast<unsigned>(static_cast<unsigned char>(c) ^ static_cast<unsigned char>(expected[i]));
  }
  return difference == 0;
}

std::string Guard::address() const {
  return fmt::format("http://127.0.0.1:{}/{}/", port_, token_);
}

bool Guard::is_ours(std::string_view authority) const {
  return authority == fmt::format("127.0.0.1:{}", port_) || authority == fmt::format("localhost:{}", port_);
}

tl::expected<Wanted, Answer> Guard::admit(const Request& request) const {
  constexpr std::string_view scheme = "http://";
  if (request.host.size() != 1 || !is_ours(request.host.front())) return tl::unexpected(forbidden());
  for (const std::string_view origin : request.origin)
    if (origin.substr(0, scheme.size()) != scheme || !is_ours(origin.substr(scheme.size()))) return tl::unexpected(forbidden());

  const std::string_view target = request.target;
  const std::string_view path = target.substr(0, target.find_first_of("?#"));
  if (path.empty() || path.front() != '/') return tl::unexpected(forbidden());
  const std::size_t slash = path.find('/', 1);
  if (!same_bytes(path.substr(1, slash == std::string_view::npos ? slash : slash - 1), token_))
    return tl::unexpected(forbidden());
  if (slash == std::string_view::npos) {
    Answer moved = error_answer(308, "the address ends with a slash");
    moved.location = fmt::format("/{}/", token_);
    return tl::unexpected(std::move(moved));
  }
  const std::string_view name = path.substr(slash + 1);
  if (!is_plain_name(name)) return tl::unexpected(error_answer(404, "there is no such address"));
  if (request.method == "POST" && !is_json(request.media_type))
    return tl::unexpected(error_answer(415, "send JSON, with Content-Type: application/json"));
  const std::size_t query = target.find('?');
  return Wanted{std::string(name), query == std::string_view::npos ? "" : tab_of(target.substr(query + 1))};
}

tl::expected<nlohmann::json, std::string> parse_body(std::string_view body) try {
  BodyWatch watch;
  auto json = nlohmann::json::parse(body, [&](int, nlohmann::json::parse_event_t event, nlohmann::json& parsed) {
    watch.event(event, parsed);
    return true;
  });
  if (!json.is_object()) return tl::unexpected<std::string>("the body is not a JSON object");
  return json;
} catch (const BodyFault& fault) {
  return tl::unexpected<std::string>(fault.what());
} catch (const nlohmann::json::parse_error& error) {
  return tl::unexpected<std::string>(fmt::format("the body is not JSON in UTF-8; it goes wrong at byte {}", error.byte));
} catch (const nlohmann::json::exception&) {
  return tl::unexpected<std::string>("the body holds a number that is out of range");
}

}  // namespace quell::app::server
