#include "quell/base/source.h"

#include <vector>

namespace quell {
namespace {

bool dated(const Source& source) {
  return !source.year.empty() && source.year.front() >= '0' && source.year.front() <= '9';
}

std::vector<std::string_view> authors_of(std::string_view text) {
  std::vector<std::string_view> authors;
  constexpr std::string_view separator = " and ";
  for (std::size_t at = text.find(separator); at != std::string_view::npos; at = text.find(separator)) {
    authors.push_back(text.substr(0, at));
    text.remove_prefix(at + separator.size());
  }
  authors.push_back(text);
  return authors;
}

std::string surname(std::string_view author) {
  return std::string(author.substr(0, author.find(',')));
}

void add_sentence(std::string& to, std::string_view sentence) {
  if (sentence.empty()) return;
  if (!to.empty()) to += ' ';
  to += sentence;
  if (to.back() != '.') to += '.';
}

}  // namespace

const Source* find_source(std::string_view key) {
  for (const auto& source : all_sources())
    if (source.key == key) return &source;
  return nullptr;
}

std::string short_citation(std::string_view key) {
  const Source* source = find_source(key);
  if (source == nullptr) return std::string(key);
  if (!dated(*source)) return std::string(source->author);  // "Balance of momentum, mass and energy" is no list of people
  const auto authors = authors_of(source->author);
  std::string text = surname(authors.front());
  if (authors.size() == 2) text += " and " + surname(authors.back());
  if (authors.size() > 2) text += " et al.";
  return text + " " + std::string(source->year);
}

std::string full_citation(std::string_view key) {
  const Source* source = find_source(key);
  if (source == nullptr) return std::string(key);
  std::string text(source->author);
  if (dated(*source)) text += " (" + std::string(source->year) + ")";
  if (text.back() != '.') text += '.';
  add_sentence(text, source->title);
  if (dated(*source)) add_sentence(text, source->publication);
  return text;
}

}  // namespace quell
