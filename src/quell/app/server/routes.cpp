#include "quell/app/server/routes.h"

#include <fmt/format.h>

#include <zlib.h>

#include <algorithm>
#include <array>
#include <span>
#include <stdexcept>

#include "quell/app/server/embedded.h"
#include "quell/io/schema_json.h"

namespace quell::app::server {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view page_missing = R"html(<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>quell</title></head><body>
<h1>This quell was built without its page</h1>
<p>The server runs, but the folder <code>web/dist</code> was not there when the program was built. To build the page, in the
project's root: <code>cd web &amp;&amp; npm ci &amp;&amp; npm run build</code>, then <code>./dev build</code>, and start
<code>quell serve</code> again. Every command of quell works without it.</p>
</body></html>
)html";

[[noreturn]] void refuse(const Trouble& trouble) {
  throw BadRequest{trouble.status, trouble.error};
}

template <typename T>
T value_or_refuse(Document::Result<T> result) {
  if (!result) refuse(result.error());
  if constexpr (!std::is_void_v<T>) return std::move(*result);
}

std::string media_of(std::string_view name) {
  static constexpr std::pair<std::string_view, std::string_view> media[] = {{"html", "text/html; charset=utf-8"},
                                                                            {"js", "text/javascript; charset=utf-8"},
                                                                            {"css", "text/css; charset=utf-8"},
                                                                            {"svg", "image/svg+xml"},
                                                                            {"json", "application/json"},
                                                                            {"woff2", "font/woff2"},
                                                                            {"png", "image/png"},
                                                                            {"ico", "image/x-icon"},
                                                                            {"wasm", "application/wasm"},
                                                                            {"txt", "text/plain; charset=utf-8"},
                                                                            {"webmanifest", "application/manifest+json"}};
  const std::string_view ending = name.substr(name.rfind('.') + 1);
  for (const auto& [known, type] : media)
    if (known == ending) return std::string(type);
  return "application/octet-stream";
}

const Asset* find_asset(std::string_view name) {
  const auto assets = page_assets();
  const auto found = std::find_if(assets.begin(), assets.end(), [&](const Asset& asset) { return asset.name == name; });
  return found == assets.end() ? nullptr : &*found;
}

std::string unpacked(std::string_view gzipped) {
  z_stream stream{};
  constexpr int gzip_window = 16 + MAX_WBITS;
  if (inflateInit2(&stream, gzip_window) != Z_OK) throw std::runtime_error("a file of the page cannot be unpacked");
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(gzipped.data()));
  stream.avail_in = static_cast<uInt>(gzipped.size());
  std::string bytes;
  std::array<char, 1u << 16u> piece{};
  int state = Z_OK;
  while (state == Z_OK) {
    stream.next_out = reinterpret_cast<Bytef*>(piece.data());
    stream.avail_out = static_cast<uInt>(piece.size());
    state = inflate(&stream, Z_NO_FLUSH);
    bytes.append(piece.data(), piece.size() - stream.avail_out);
  }
  inflateEnd(&stream);
  if (state != Z_STREAM_END) throw std::runtime_error("a file of the page cannot be unpacked");
  return bytes;
}

/// Whether a client has to have the bytes unpacked. One that says nothing takes any coding (RFC 9110, section 12.5.3).
bool refuses_gzip(std::string_view accept_encoding) {
  return !accept_encoding.empty() && accept_encoding.find("gzip") == std::string_view::npos &&
         accept_encoding.find('*') == std::string_view::npos;
}

Answer asset_answer(const Asset& asset, const Request& request) {
  const bool unpack = refuses_gzip(request.accept_encoding);
  return {.body = unpack ? unpacked(asset.gzipped) : std::string(asset.gzipped),
          .media = media_of(asset.name),
          .gzipped = !unpack,
          .immutable = asset.name.substr(0, 7) == "assets/"};
}

Answer json_answer(std::string text) {
  return {.body = std::move(text)};
}

}  // namespace

/// One row for each address: adding one is adding a row.
struct Endpoints {
  struct Get {
    std::string_view name;
    Answer (*answer)(Routes& routes, const Wanted& wanted);
  };
  struct Post {
    std::string_view name;
    Answer (*answer)(Routes& routes, const nlohmann::json& body);
  };

  static constexpr Get gets[] = {
      {"document", [](Routes& r, const Wanted& w) { return json_answer(r.document_answer(w.tab)); }},
      {"examples", [](Routes&, const Wanted&) { return json_answer(examples_answer()); }},
      {"health", [](Routes&, const Wanted&) { return json_answer(to_text({{"version", QUELL_VERSION}})); }},
      {"report.html",
       [](Routes& r, const Wanted&) {
         return Answer{.body = r.answers_.report_page(), .media = "text/html; charset=utf-8", .has_style = true};
       }},
      {"schema", [](Routes&, const Wanted&) { return json_answer(io::schema_json()); }},
      {"units", [](Routes&, const Wanted&) { return json_answer(units_answer()); }},
  };
  static constexpr Post posts[] = {
      {"design", [](Routes& r, const nlohmann::json& b) { return json_answer(r.answers_.design(b)); }},
      {"document", [](Routes& r, const nlohmann::json& b) { return r.post_change(b); }},
      {"document/open", [](Routes& r, const nlohmann::json& b) { return json_answer(r.post_open(b)); }},
      {"document/save", [](Routes& r, const nlohmann::json& b) { return r.post_save(b); }},
      {"package", [](Routes& r, const nlohmann::json& b) { return json_answer(r.answers_.package(b)); }},
      {"report", [](Routes& r, const nlohmann::json& b) { return json_answer(r.answers_.report(b)); }},
      {"tab", [](Routes& r, const nlohmann::json& b) { return json_answer(r.post_tab(b)); }},
      {"working", [](Routes& r, const nlohmann::json& b) { return json_answer(r.answers_.working(b)); }},
  };

  template <typename Row>
  static const Row* find(std::span<const Row> rows, std::string_view name) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row& one) { return one.name == name; });
    return row == rows.end() ? nullptr : &*row;
  }
};

Answer Routes::answer(const Request& request, const Wanted& wanted) try {
  const auto* get = Endpoints::find<Endpoints::Get>(Endpoints::gets, wanted.name);
  const auto* post = Endpoints::find<Endpoints::Post>(Endpoints::posts, wanted.name);
  const Asset* asset = find_asset(wanted.name.empty() ? "index.html" : wanted.name);
  const bool is_page = wanted.name.empty() || asset != nullptr;
  if (request.method == "GET") {
    if (get != nullptr) return get->answer(*this, wanted);
    if (asset != nullptr) return asset_answer(*asset, request);
    if (is_page) return {.status = 503, .body = std::string(page_missing), .media = "text/html; charset=utf-8"};
  }
  if (request.method == "POST" && post != nullptr) {
    const auto body = parse_body(request.body);
    if (!body) return error_answer(400, body.error());
    return post->answer(*this, *body);
  }
  if (get == nullptr && post == nullptr && !is_page) return error_answer(404, "there is no such address");
  Answer answer = error_answer(405, "this address does not take " + request.method);
  answer.allow = post == nullptr ? "GET" : get == nullptr ? "POST" : "GET, POST";
  return answer;
} catch (const BadRequest& bad) {
  return error_answer(bad.status, bad.error);
}

std::string Routes::document_answer(const std::string& tab) {
  const DocumentView view = document_.view();
  std::size_t others = 0;
  {
    const std::lock_guard lock(tabs_mutex_);
    others = tabs_.others(tab, std::chrono::steady_clock::now());
  }
  return to_text({{"path", view.content.path.empty() ? Json(nullptr) : Json(view.content.path)},
                  {"text", view.content.text},
                  {"files", view.content.files},
                  {"revision", view.revision},
                  {"saved_revision", view.saved_revision},
                  {"recovered", view.recovered},
                  {"other_tabs", others}});
}

Answer Routes::post_change(const nlohmann::json& body) {
  const auto revision = optional_number_in(body, "revision");
  if (!revision || !(*revision >= 0.0 && *revision < 1e15))
    throw BadRequest{400, "revision is the one that the edit started from"};
  const auto changed = document_.change({static_cast<long>(*revision), text_in(body, "text"), files_in(body)});
  if (changed) return json_answer(to_text({{"revision", *changed}}));
  if (changed.error().status != 409) refuse(changed.error());
  Json conflict{{"error", changed.error().error}};
  conflict.update(Json::parse(document_answer(optional_text_in(body, "tab").value_or(""))));
  return {.status = 409, .body = to_text(conflict)};
}

std::string Routes::post_open(const nlohmann::json& body) {
  const auto path = optional_text_in(body, "path");
  const auto example = optional_text_in(body, "example");
  const bool recovers = body.contains("recover");
  const bool is_new = flag_in(body, "new");
  if (int{path.has_value()} + int{example.has_value()} + int{recovers} + int{is_new} != 1)
    throw BadRequest{400, "name one of example, path, new, recover"};
  if (path) {
    if (std::filesystem::path(*path).extension() != ".toml") throw BadRequest{400, "the name of a site file ends with .toml"};
    value_or_refuse(document_.open_path(*path));
  } else if (example) {
    open_example(*example, document_);
  } else if (recovers) {
    value_or_refuse(document_.recover(flag_in(body, "recover")));
  } else {
    value_or_refuse(document_.open_new());
  }
  return document_answer(optional_text_in(body, "tab").value_or(""));
}

Answer Routes::post_save(const nlohmann::json& body) {
  value_or_refuse(document_.save(optional_text_in(body, "path"), flag_in(body, "overwrite")));
  const DocumentView view = document_.view();
  return json_answer(to_text({{"path", view.content.path}, {"saved_revision", view.saved_revision}}));
}

std::string Routes::post_tab(const nlohmann::json& body) {
  const std::string id = text_in(body, "id");
  if (id.empty() || id.size() > 64) throw BadRequest{400, "id is a short text of the tab's own"};
  const bool closed = flag_in(body, "closed");
  const auto now = std::chrono::steady_clock::now();
  const std::lock_guard lock(tabs_mutex_);
  if (closed) {
    tabs_.closed(id);
  } else {
    tabs_.seen(id, now);
  }
  return to_text({{"other_tabs", tabs_.others(id, now)}, {"revision", document_.view().revision}});
}

}  // namespace quell::app::server
