// What the page asks of the engine: each answer is a thin call of what a command of the program does.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "quell/app/server/document.h"
#include "quell/base/outcome.h"
#include "quell/site/study.h"

namespace quell::app::server {

/// Remembers the last site whose floods and river were resolved: to hold the apron elsewhere, or to try another type, needs no
/// new routing of floods.
class Studies {
 public:
  /// `bytes` is everything that the site was read from; the same bytes are the same site.
  Outcome<site::ResolvedSite> resolve(const site::Site& site, const std::string& bytes);

 private:
  std::mutex mutex_;
  std::string bytes_;
  std::shared_ptr<const site::ResolvedSite> resolved_;
};

/// A request that cannot be answered as it stands; becomes {"error": …}.
struct BadRequest {
  int status = 400;
  std::string error;
};

/// The member of that name, of the right kind; BadRequest where it is missing or something else. The `optional_` ones give
/// nothing where it is missing or null.
std::string text_in(const nlohmann::json& body, const char* name);
std::optional<std::string> optional_text_in(const nlohmann::json& body, const char* name);
std::optional<double> optional_number_in(const nlohmann::json& body, const char* name);
bool flag_in(const nlohmann::json& body, const char* name);

/// Of "files": null takes a file away.
std::map<std::string, std::optional<std::string>> files_in(const nlohmann::json& body);

/// A reply in JSON, ready to send.
std::string to_text(const nlohmann::ordered_json& json);

/// The engine's side. Each answer takes {"text", "files"}: the text as it stands on the page, with the files that differ from
/// the document's. Called from many threads.
class Answers {
 public:
  explicit Answers(const Document& document) : document_(document) {}

  /// With "edits" ([{"path", "value"} | {"path", "remove": true} | {"insert_table", "value"?}]) the design is of the text after
  /// them, which is answered too: one question from an edit to its consequence. Edits that the text cannot take are answered by
  /// {"refused": problems} alone. With "form" the inputs and remarks are answered as well.
  std::string design(const nlohmann::json& body);
  std::string working(const nlohmann::json& body);
  std::string report(const nlohmann::json& body) const;
  /// The report of the document as it stands, to be read in the browser.
  std::string report_page() const;
  std::string package(const nlohmann::json& body) const;

 private:
  const Document& document_;
  Studies studies_;
};

/// For each system and SI unit: the unit in which it is printed, and the factor from SI.
std::string units_answer();
/// The examples: id, title, summary.
std::string examples_answer();
/// Opens the example of that id; BadRequest where there is none.
void open_example(const std::string& id, Document& document);

}  // namespace quell::app::server
