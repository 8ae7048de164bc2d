#include "quell/app/server/answers.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "quell/app/design_files.h"
#include "quell/app/server/embedded.h"
#include "quell/design/design.h"
#include "quell/io/result_json.h"
#include "quell/output/format.h"
#include "quell/output/report/report.h"

namespace quell::app::server {
namespace {

using Json = nlohmann::ordered_json;

/// The site on the page. `name` is how messages and reports call it.
io::SiteFile read_site(const nlohmann::json& body, const Document& document, const std::filesystem::path& name) {
  const auto files = files_in(body);
  return io::read_site_text(text_in(body, "text"), name, [&](const std::string& file) {
    const auto given = files.find(file);
    if (given != files.end() && given->second) return tl::expected<std::string, std::string>(*given->second);
    return document.file(file);
  });
}

/// For messages beside the form: files go by the names that stand in the text.
io::SiteFile read_site_briefly(const nlohmann::json& body, const Document& document) {
  return read_site(body, document, "site.toml");
}

/// For what leaves the page: the report names the file.
io::SiteFile read_site_with_path(const nlohmann::json& body, const Document& document) {
  const std::string path = document.view().content.path;
  return read_site(body, document, path.empty() ? std::filesystem::path("site.toml") : std::filesystem::path(path));
}

/// Messages say what is wrong; behind a semicolon, what would be right. What the user typed stands in quotes.
std::size_t hint_start(std::string_view message) {
  bool quoted = false;
  for (std::size_t i = 0; i + 1 < message.size(); ++i) {
    if (message[i] == '\'' || message[i] == '"') quoted = !quoted;
    if (!quoted && message[i] == ';' && message[i + 1] == ' ') return i;
  }
  return message.size();
}

Json problems_json(const std::vector<io::Problem>& problems) {
  Json list = Json::array();
  for (const io::Problem& problem : problems) {
    const std::size_t end = hint_start(problem.message);
    list.push_back({{"file", problem.file},
                    {"line", problem.line},
                    {"column", problem.column},
                    {"message", problem.message.substr(0, end)},
                    {"hint", end < problem.message.size() ? problem.message.substr(end + 2) : ""},
                    {"key", problem.key}});
  }
  return list;
}

const dissipators::Dissipator* type_of(const std::string& id) {
  const auto* type = dissipators::find_dissipator(id);
  if (type == nullptr) throw BadRequest{400, fmt::format("there is no type '{}'", id.substr(0, 60))};
  return type;
}

/// "type" alone, or "types", or "all_types", or the site's candidates.
std::vector<const dissipators::Dissipator*> types_in(const nlohmann::json& body, const site::Site& site) {
  if (const auto one = optional_text_in(body, "type")) return {type_of(*one)};
  const auto found = body.find("types");
  if (found == body.end() || found->is_null()) return wanted_types(site, flag_in(body, "all_types"));
  if (!found->is_array()) throw BadRequest{400, "types is a list of type ids, or null"};
  std::vector<const dissipators::Dissipator*> types;
  for (const auto& id : *found) {
    if (!id.is_string()) throw BadRequest{400, "types is a list of type ids, or null"};
    types.push_back(type_of(id.get<std::string>()));
  }
  return types;
}

/// An apron held at a level, as a site file with the same highest and lowest apron would.
void hold_apron(const nlohmann::json& body, site::Site& site) {
  const auto level = optional_number_in(body, "apron_level");
  if (!level) return;
  site.basin.has_highest_apron = site.basin.has_lowest_apron = true;
  site.basin.highest_apron_level = site.basin.lowest_apron_level = *level;
}

struct Run {
  io::SiteFile file;
  std::optional<design::DesignResult> result;
  std::string reason;  ///< why there is none
  double engine_ms = 0.0;
};

Run run(io::SiteFile file, const std::vector<const dissipators::Dissipator*>& types, bool for_report) {
  Run run{std::move(file), std::nullopt, {}, 0.0};
  const auto start = std::chrono::steady_clock::now();
  auto result = design::run_design(run.file.site, {.types = types, .with_workings = for_report, .with_profiles = for_report});
  run.engine_ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
  if (result) {
    run.result = std::move(*result);
    run.result->engine_seconds = run.engine_ms / 1000.0;
  } else {
    run.reason = result.error().reason;
  }
  return run;
}

/// A run for files to take away; the reason where there is none.
Run run_for_files(const nlohmann::json& body, const Document& document) {
  io::SiteFile file = read_site_with_path(body, document);
  if (!file.good()) throw BadRequest{409, "the site has problems; mend them first"};
  const auto types = wanted_types(file.site, flag_in(body, "all_types"));
  Run made = run(std::move(file), types, true);
  if (!made.result) throw BadRequest{409, "no physical answer: " + made.reason};
  return made;
}

std::string media_of(const std::string& name) {
  const std::string_view ending = std::string_view(name).substr(name.rfind('.') + 1);
  return ending == "html" ? "text/html" : ending == "svg" ? "image/svg+xml" : "application/json";
}

std::string files_json(const std::vector<io::FileText>& files) {
  Json list = Json::array();
  for (const io::FileText& file : files)
    list.push_back({{"name", file.name}, {"media", media_of(file.name)}, {"text", file.text}});
  return to_text({{"files", list}});
}

/// Line of a text, from 0; empty where there is none.
std::string_view line_of(std::string_view text, int number) {
  for (; number > 0 && !text.empty(); --number) text.remove_prefix(std::min(text.size(), text.find('\n') + 1));
  return text.substr(0, text.find('\n'));
}

}  // namespace

std::optional<std::string> optional_text_in(const nlohmann::json& body, const char* name) {
  const auto found = body.find(name);
  if (found == body.end() || found->is_null()) return std::nullopt;
  if (!found->is_string()) throw BadRequest{400, fmt::format("{} is a text", name)};
  return found->get<std::string>();
}

std::string text_in(const nlohmann::json& body, const char* name) {
  auto text = optional_text_in(body, name);
  if (!text) throw BadRequest{400, fmt::format("{} is missing", name)};
  return std::move(*text);
}

std::optional<double> optional_number_in(const nlohmann::json& body, const char* name) {
  const auto found = body.find(name);
  if (found == body.end() || found->is_null()) return std::nullopt;
  if (!found->is_number()) throw BadRequest{400, fmt::format("{} is a number", name)};
  return found->get<double>();
}

bool flag_in(const nlohmann::json& body, const char* name) {
  const auto found = body.find(name);
  if (found == body.end() || found->is_null()) return false;
  if (!found->is_boolean()) throw BadRequest{400, fmt::format("{} is true or false", name)};
  return found->get<bool>();
}

std::map<std::string, std::optional<std::string>> files_in(const nlohmann::json& body) {
  std::map<std::string, std::optional<std::string>> files;
  const auto found = body.find("files");
  if (found == body.end() || found->is_null()) return files;
  if (!found->is_object()) throw BadRequest{400, "files is an object of texts by name"};
  for (const auto& [name, text] : found->items()) {
    if (!text.is_string() && !text.is_null()) throw BadRequest{400, "files is an object of texts by name"};
    files[name] = text.is_null() ? std::nullopt : std::optional(text.get<std::string>());
  }
  return files;
}

std::string to_text(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string check_answer(const nlohmann::json& body, const Document& document) {
  const io::SiteFile file = read_site_briefly(body, document);
  Json inputs = Json::array();
  for (const io::EchoedInput& input : file.inputs)
    inputs.push_back({{"section", input.section},
                      {"key", input.key},
                      {"typed", input.typed},
                      {"meaning", input.meaning},
                      {"is_default", input.is_default},
                      {"line", input.line}});
  return to_text({{"problems", problems_json(file.problems)}, {"remarks", problems_json(file.remarks)}, {"inputs", inputs}});
}

std::string design_answer(const nlohmann::json& body, const Document& document) {
  if (optional_number_in(body, "length")) throw BadRequest{400, "the length follows from the type; it cannot be given"};
  io::SiteFile file = read_site_briefly(body, document);
  Json head{{"problems", problems_json(file.problems)}, {"units", file.site.units == UnitSystem::si ? "SI" : "US"}};
  std::string result = "null";
  if (file.good()) {
    hold_apron(body, file.site);
    const auto types = types_in(body, file.site);
    const Run made = run(std::move(file), types, false);
    head["reason"] = made.result ? Json(nullptr) : Json(made.reason);
    head["engine_ms"] = made.engine_ms;
    if (made.result) result = io::design_json(made.file, *made.result, io::JsonLayout::compact);
  } else {
    head["reason"] = nullptr;
    head["engine_ms"] = 0.0;
  }
  // The result is JSON text already: put in as it is, not parsed and written once more.
  std::string text = to_text(head);
  text.erase(text.rfind('}'));
  return text + ",\"result\":" + result + "}\n";
}

std::string working_answer(const nlohmann::json& body, const Document& document) {
  io::SiteFile file = read_site_briefly(body, document);
  if (!file.good()) throw BadRequest{409, "the site has problems; mend them first"};
  hold_apron(body, file.site);
  const auto section = optional_number_in(body, "section").value_or(0.0);
  if (!(section >= 0.0 && section < 1000.0)) throw BadRequest{400, "section is the number of a section, or null for all"};
  const Run made = run(std::move(file), {type_of(text_in(body, "type"))}, true);
  if (!made.result) throw BadRequest{409, "no physical answer: " + made.reason};
  const design::Option& option = made.result->options.front();
  Json titles = Json::array();
  for (const WorkingSection& one : option.working.sections())
    titles.push_back(output::Printer(made.file.site.units).words(one.title));
  return to_text({{"html", output::workings_html(option.working, static_cast<std::size_t>(section), made.file.site.units)},
                  {"sections", titles}});
}

std::string report_answer(const nlohmann::json& body, const Document& document) {
  const Run made = run_for_files(body, document);
  return files_json({{"report.html", report_of(made.file, *made.result, made.file.site.units)}});
}

std::string package_answer(const nlohmann::json& body, const Document& document) {
  const Run made = run_for_files(body, document);
  return files_json(output_files(made.file, *made.result, made.file.site.units));
}

std::string examples_answer() {
  // The README of an example: a heading, the notice, what it is, what it shows.
  Json list = Json::array();
  for (const ExampleFile& file : example_files())
    if (file.name == "README.md")
      list.push_back({{"id", file.example},
                      {"title", std::string(line_of(file.text, 0).substr(2))},
                      {"summary", std::string(line_of(file.text, 2)) + " " + std::string(line_of(file.text, 3))}});
  return to_text(list);
}

void open_example(const std::string& id, Document& document) {
  std::string text;
  std::map<std::string, std::string> files;
  for (const ExampleFile& file : example_files()) {
    if (file.example != id || file.name == "README.md") continue;
    if (file.name == "site.toml") {
      text = file.text;
    } else {
      files.emplace(file.name, file.text);
    }
  }
  if (text.empty()) throw BadRequest{404, fmt::format("there is no example '{}'", id.substr(0, 60))};
  if (const auto opened = document.open_text(std::move(text), std::move(files)); !opened)
    throw BadRequest{opened.error().status, opened.error().error};
}

}  // namespace quell::app::server
