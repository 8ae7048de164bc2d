#include "quell/output/report/html.h"

#include <cassert>

#include "quell/output/format.h"

namespace quell::output {

namespace {

std::string_view name_of_tag(std::string_view tag) {
  return tag.substr(0, tag.find(' '));
}

std::string class_attribute(std::string_view style) {
  return style.empty() ? std::string() : " class=\"" + std::string(style) + "\"";
}

}  // namespace

void Html::open(std::string_view tag) {
  out_ += '<';
  out_ += tag;
  out_ += '>';
  open_.emplace_back(name_of_tag(tag));
}

void Html::close() {
  assert(!open_.empty());
  out_ += "</" + open_.back() + ">\n";
  open_.pop_back();
}

void Html::element(std::string_view tag, std::string_view words) {
  element_raw(tag, escape_xml(words));
}

void Html::element_raw(std::string_view tag, std::string_view markup) {
  open(tag);
  out_ += markup;
  close();
}

void Html::text(std::string_view words) {
  out_ += escape_xml(words);
}

void Html::open_table(std::string_view style, std::vector<Column> columns, std::string_view caption) {
  columns_ = std::move(columns);
  open("table" + class_attribute(style));
  if (!caption.empty()) element_raw("caption", caption);
  open("thead");
  open("tr");
  for (const auto& column : columns_) element_raw("th scope=\"col\"" + class_attribute(column.style), column.head);
  close();
  close();
  open("tbody");
}

void Html::row(const std::vector<std::string>& cells, std::string_view style) {
  assert(cells.size() == columns_.size());
  open("tr" + class_attribute(style));
  for (std::size_t i = 0; i < cells.size(); ++i) {
    out_ += "<td" + class_attribute(columns_[i].style) + ">" + cells[i] + "</td>";
  }
  close();
}

void Html::wide_row(std::string_view markup, std::string_view style) {
  open("tr" + class_attribute(style));
  element_raw("td colspan=\"" + std::to_string(columns_.size()) + "\"", markup);
  close();
}

void Html::close_table() {
  close();
  close();
}

const std::string& Html::finished() const {
  assert(open_.empty());
  return out_;
}

}  // namespace quell::output
