#include "quell/app/server/answers.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "quell/app/design_files.h"
#include "quell/app/server/embedded.h"
#include "quell/design/design.h"
#include "quell/io/result_json.h"
#include "quell/io/schema_rows.h"
#include "quell/io/site_edit.h"
#include "quell/output/format.h"
#include "quell/output/report/report.h"

namespace quell::app::server {
namespace {

using Json = nlohmann::ordered_json;

/// The site on the page, and everything that it was read from, parted by a byte that no good text holds.
struct PageSite {
  io::SiteFile file;
  std::string bytes;
};

/// `name` is how messages and reports call it; `body` gives the files that differ from the document's.
PageSite read_site(std::string text, const nlohmann::json& body, const Document& document, const std::filesystem::path& name) {
  const auto files = files_in(body);
  PageSite page{{}, std::move(text)};
  page.file = io::read_site_text(std::string(page.bytes), name, [&](const std::string& file) {
    const auto given = files.find(file);
    auto bytes =
        given != files.end() && given->second ? tl::expected<std::string, std::string>(*given->second) : document.file(file);
    if (bytes) page.bytes += '\0' + *bytes;
    return bytes;
  });
  return page;
}

/// For messages beside the form: files go by the names that stand in the text.
PageSite read_site_briefly(std::string text, const nlohmann::json& body, const Document& document) {
  return read_site(std::move(text), body, document, "site.toml");
}

/// For what leaves the page: the report names the file.
io::SiteFile read_site_with_path(const nlohmann::json& body, const Document& document) {
  const std::string path = document.view().content.path;
  return read_site(text_in(body, "text"), body, document, path.empty() ? "site.toml" : path).file;
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

/// A basin held by hand, as a site file would that has the same highest and lowest apron, and this length.
void hold_basin(const nlohmann::json& body, site::Site& site) {
  if (const auto level = optional_number_in(body, "apron_level")) {
    if (!io::level_range.contains(*level)) throw BadRequest{400, "apron_level lies between -500 m and 9000 m"};
    site.basin.has_highest_apron = site.basin.has_lowest_apron = true;
    site.basin.highest_apron_level = site.basin.lowest_apron_level = *level;
  }
  if (const auto length = optional_number_in(body, "length")) {
    if (!io::basin_length_range.contains(*length)) throw BadRequest{400, "length lies between 0.5 m and 500 m"};
    site.basin.length = *length;
  }
}

struct Run {
  io::SiteFile file;
  std::optional<design::DesignResult> result;
  std::string reason;  ///< why there is none
  double engine_ms = 0.0;
};

using Clock = std::chrono::steady_clock;

/// What a run gives besides the design.
struct Extras {
  bool workings = false;
  bool figures = false;       ///< water profiles for figures
  bool moving_water = false;  ///< the water of every discharge for the page
};

Run run(io::SiteFile file, Outcome<site::ResolvedSite> resolved, const std::vector<const dissipators::Dissipator*>& types,
        const Extras& extras, Clock::time_point start) {
  Run run{std::move(file), std::nullopt, {}, 0.0};
  auto result = resolved ? design::run_design(std::move(*resolved), {.types = types,
                                                                     .with_workings = extras.workings,
                                                                     .with_profiles = extras.figures,
                                                                     .with_moving_water = extras.moving_water})
                         : Outcome<design::DesignResult>(tl::unexpected(resolved.error()));
  run.engine_ms = std::chrono::duration<double, std::milli>(Clock::now() - start).count();
  if (result) {
    run.result = std::move(*result);
    run.result->engine_seconds = run.engine_ms / 1000.0;
  } else {
    run.reason = result.error().reason;
  }
  return run;
}

/// A run for files to take away.
Run run_for_files(const nlohmann::json& body, const Document& document) {
  const auto start = Clock::now();
  io::SiteFile file = read_site_with_path(body, document);
  if (!file.good()) throw BadRequest{409, "the site has problems; mend them first"};
  const auto types = wanted_types(file.site, flag_in(body, "all_types"));
  auto resolved = site::resolve(file.site);
  Run made = run(std::move(file), std::move(resolved), types, {.workings = true, .figures = true}, start);
  if (!made.result) throw BadRequest{409, "no physical answer: " + made.reason};
  return made;
}

/// A run for the page, with the basin held as it says.
Run run_for_page(const nlohmann::json& body, PageSite page, Studies& studies,
                 const std::vector<const dissipators::Dissipator*>& types, const Extras& extras) {
  const auto start = Clock::now();
  auto resolved = studies.resolve(page.file.site, page.bytes);
  if (resolved) hold_basin(body, resolved->site);
  return run(std::move(page.file), std::move(resolved), types, extras, start);
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

Json inputs_json(const std::vector<io::EchoedInput>& inputs) {
  Json list = Json::array();
  for (const io::EchoedInput& input : inputs)
    list.push_back({{"section", input.section},
                    {"key", input.key},
                    {"typed", input.typed},
                    {"meaning", input.meaning},
                    {"is_default", input.is_default},
                    {"line", input.line}});
  return list;
}

io::SiteEdit edit_in(const nlohmann::json& edit) {
  if (!edit.is_object()) throw BadRequest{400, "an edit is an object"};
  if (const auto inserted = optional_text_in(edit, "insert_table"))
    return {*inserted, io::EditAction::insert, optional_text_in(edit, "value").value_or("")};
  if (flag_in(edit, "remove")) return {text_in(edit, "path"), io::EditAction::remove, ""};
  return {text_in(edit, "path"), io::EditAction::set, text_in(edit, "value")};
}

std::optional<std::vector<io::SiteEdit>> edits_in(const nlohmann::json& body) {
  const auto found = body.find("edits");
  if (found == body.end() || found->is_null()) return std::nullopt;
  if (!found->is_array()) throw BadRequest{400, "edits is a list"};
  std::vector<io::SiteEdit> edits;
  for (const auto& edit : *found) edits.emplace_back(edit_in(edit));
  return edits;
}

/// Line of a text, from 0; empty where there is none.
std::string_view line_of(std::string_view text, int number) {
  for (; number > 0 && !text.empty(); --number) text.remove_prefix(std::min(text.size(), text.find('\n') + 1));
  return text.substr(0, text.find('\n'));
}

}  // namespace

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

Outcome<site::ResolvedSite> Studies::resolve(const site::Site& site, const std::string& bytes) {
  {
    const std::lock_guard lock(mutex_);
    if (resolved_ && bytes == bytes_) return *resolved_;
  }
  auto resolved = site::resolve(site);
  if (!resolved) return resolved;
  const std::lock_guard lock(mutex_);
  bytes_ = bytes;
  resolved_ = std::make_shared<const site::ResolvedSite>(*resolved);
  return resolved;
}

std::string Answers::design(const nlohmann::json& body) {
  std::string text = text_in(body, "text");
  const auto edits = edits_in(body);
  if (edits) {
    auto edited = io::apply_edits(text, *edits);
    if (!edited) return to_text({{"refused", problems_json(edited.error())}});
    text = std::move(*edited);
  }
  PageSite page = read_site_briefly(text, body, document_);
  const io::SiteFile& file = page.file;
  Json head{{"problems", problems_json(file.problems)},
            {"units", file.site.units == UnitSystem::si ? "SI" : "US"},
            {"reason", nullptr},
            {"engine_ms", 0.0}};
  if (edits) head["text"] = text;
  if (flag_in(body, "form")) {
    head["remarks"] = problems_json(file.remarks);
    head["inputs"] = inputs_json(file.inputs);
  }
  std::string result = "null";
  if (file.good()) {
    const auto types = types_in(body, file.site);
    const Run made = run_for_page(body, std::move(page), studies_, types, {.moving_water = flag_in(body, "profiles")});
    if (!made.result) head["reason"] = made.reason;
    head["engine_ms"] = made.engine_ms;
    const output::Printer printer(made.file.site.units);
    if (made.result)
      result = io::page_json(made.file, *made.result, [&](std::string_view words) { return printer.words(words); });
  }
  // The result is JSON text already: the head is put before it, and its many bytes are neither parsed nor copied.
  std::string start = to_text(head);
  start.replace(start.rfind('}'), std::string::npos, ",\"result\":");
  result.insert(0, start).append("}\n");
  return result;
}

std::string Answers::working(const nlohmann::json& body) {
  PageSite page = read_site_briefly(text_in(body, "text"), body, document_);
  if (!page.file.good()) throw BadRequest{409, "the site has problems; mend them first"};
  const double section = optional_number_in(body, "section").value_or(0.0);
  if (!(section >= 0.0 && section < 1000.0)) throw BadRequest{400, "section is the number of a section, or null for all"};
  const UnitSystem units = page.file.site.units;
  const Run made = run_for_page(body, std::move(page), studies_, {type_of(text_in(body, "type"))}, {.workings = true});
  if (!made.result) throw BadRequest{409, "no physical answer: " + made.reason};
  const design::Option& option = made.result->options.front();
  const Working& working = option.working;
  Json titles = Json::array();
  for (const WorkingSection& one : working.sections()) titles.push_back(output::Printer(units).words(one.title));
  Json steps = Json::object();
  for (const Finding& finding : option.findings)
    if (const StepNumber step = step_behind(finding, working); step.found())
      steps[finding.id] = fmt::format("{}.{}", step.section, step.step);
  return to_text({{"html", output::workings_html(working, static_cast<std::size_t>(section), units)},
                  {"sections", titles},
                  {"steps", steps}});
}

std::string Answers::report(const nlohmann::json& body) const {
  const Run made = run_for_files(body, document_);
  return files_json({{"report.html", report_of(made.file, *made.result, made.file.site.units)}});
}

std::string Answers::report_page() const {
  const Run made = run_for_files({{"text", document_.view().content.text}}, document_);
  return report_of(made.file, *made.result, made.file.site.units);
}

std::string Answers::package(const nlohmann::json& body) const {
  const Run made = run_for_files(body, document_);
  return files_json(output_files(made.file, *made.result, made.file.site.units));
}

std::string units_answer() {
  Json systems = Json::object();
  for (const auto& [name, system] : {std::pair{"SI", UnitSystem::si}, std::pair{"US", UnitSystem::us}}) {
    Json& table = systems[name] = Json::object();
    for (const Dimension one : {dimension::length, dimension::area, dimension::volume, dimension::time, dimension::velocity,
                                dimension::discharge, dimension::unit_discharge, dimension::pressure, dimension::force,
                                dimension::unit_weight, dimension::power, dimension::momentum_function})
      table[unit_symbol(one, UnitSystem::si)] = {{"factor", to_unit(1.0, one, system)}, {"label", unit_label(one, system)}};
  }
  return to_text(systems);
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
