// What the page asks of the engine: each answer is a thin call of what a command of the program does.
#pragma once

#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "quell/app/server/document.h"

namespace quell::app::server {

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

// Each takes {"text", "files"}: the text as it stands on the page, with the files that differ from the document's.
std::string check_answer(const nlohmann::json& body, const Document& document);
std::string design_answer(const nlohmann::json& body, const Document& document);
std::string working_answer(const nlohmann::json& body, const Document& document);
std::string report_answer(const nlohmann::json& body, const Document& document);
std::string package_answer(const nlohmann::json& body, const Document& document);

/// The examples: id, title, summary.
std::string examples_answer();
/// Opens the example of that id; BadRequest where there is none.
void open_example(const std::string& id, Document& document);

}  // namespace quell::app::server
