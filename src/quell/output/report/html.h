// Writing HTML that is also well-formed XML: every tag that is opened is closed, all text is escaped.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace quell::output {

class Html {
 public:
  /// `tag` may carry attributes: open("div class=\"note\"").
  void open(std::string_view tag);
  void close();
  /// <tag>escaped text</tag>
  void element(std::string_view tag, std::string_view text);
  /// <tag>markup as it is</tag>
  void element_raw(std::string_view tag, std::string_view markup);
  void text(std::string_view words);
  void raw(std::string_view markup) { out_ += markup; }

  /// Table with heads that repeat on every printed page. Heads and cells are markup, so the caller escapes what people typed.
  /// `classes` of a column ("n" for numbers) apply to head and cells.
  struct Column {
    std::string head;
    std::string style;
  };
  void open_table(std::string_view style, std::vector<Column> columns, std::string_view caption = {});
  void row(std::initializer_list<std::string> cells, std::string_view style = {}) {
    row(std::vector<std::string>(cells), style);
  }
  void row(const std::vector<std::string>& cells, std::string_view style = {});
  /// A row of one cell over all columns.
  void wide_row(std::string_view markup, std::string_view style);
  void close_table();

  const std::string& finished() const;

 private:
  std::string out_;
  std::vector<std::string> open_;
  std::vector<Column> columns_;
};

}  // namespace quell::output
