// JSON written straight to text, in order, without a tree of it in memory.
//
// A JsonPlace is where one value belongs. Values are put there, or an object or an array is opened on it, which closes with its
// block of code:
//
//   void point_json(JsonPlace at, const Point& point) {
//     JsonObject json(at);
//     json.member("x", point.x);
//     json.list("marks", point.marks, mark_json);  // void mark_json(JsonPlace at, const Mark& mark)
//   }
//
// Asserted: every place is filled once, and only the innermost scope is written to.
#pragma once

#include <concepts>
#include <cstddef>
#include <initializer_list>
#include <limits>
#include <string>
#include <string_view>

namespace quell::io {

/// A value on each line, indented by one more space in each scope; or all in one line without spaces.
enum class JsonStyle { lines, compact };

/// Doubles in the shortest text that reads back as the same number, whole ones with ".0"; or to nine significant digits, in
/// less time and without zeros at their end.
enum class JsonNumbers { exact, nine_digits };

class JsonWriter;

/// A copy is the same place. Valid until something else is written.
class JsonPlace {
 public:
  explicit JsonPlace(JsonWriter& writer) : writer_(&writer) {}

  void put(std::nullptr_t);
  /// Null where it is not finite: JSON has no infinity and no NaN.
  void put(double value);
  void put(int value);
  /// UTF-8. What is not becomes U+FFFD, so that no text can spoil the JSON.
  void put(std::string_view text);
  void put(std::same_as<bool> auto value) { put_bool(value); }  // a template, since a string literal would become a bool
  /// An array of numbers.
  void put(std::initializer_list<double> values) { list(values); }

  /// An array: `write(place, item, more...)` for each item.
  template <typename Items, typename Write, typename... More>
  void list(const Items& items, Write write, const More&... more);
  /// An array of values that can be put as they are.
  template <typename Items>
  void list(const Items& items);

 private:
  friend class JsonScope;
  void put_bool(bool value);
  JsonWriter* writer_;
};

/// What objects and arrays have in common.
class JsonScope {
 public:
  JsonScope(const JsonScope&) = delete;
  JsonScope& operator=(const JsonScope&) = delete;

 protected:
  JsonScope(JsonPlace at, char opening, char closing);
  ~JsonScope();
  JsonPlace next(std::string_view key);
  JsonPlace next();

 private:
  char* start_next(std::size_t more);
  JsonPlace place_at(const char* end);

  JsonWriter& writer_;
  const JsonScope* outer_;
  char closing_;
  bool empty_ = true;
};

class JsonArray : private JsonScope {
 public:
  explicit JsonArray(JsonPlace at) : JsonScope(at, '[', ']') {}
  JsonPlace item() { return next(); }
};

/// Keys go out as they are: plain ASCII without quotes or backslashes.
class JsonObject : private JsonScope {
 public:
  explicit JsonObject(JsonPlace at) : JsonScope(at, '{', '}') {}

  JsonPlace member(std::string_view key) { return next(key); }
  template <typename Value>
  void member(std::string_view key, const Value& value) {
    member(key).put(value);
  }
  /// Null where the text is empty.
  void text_or_null(std::string_view key, std::string_view text) {
    if (text.empty()) return member(key, nullptr);
    member(key, text);
  }
  template <typename Items, typename... How>
  void list(std::string_view key, const Items& items, const How&... how) {
    member(key).list(items, how...);
  }
};

class JsonWriter {
 public:
  /// `expected_size` characters, or a guess at it, so that the text need not move while it grows.
  explicit JsonWriter(JsonStyle style, JsonNumbers numbers = JsonNumbers::exact, std::size_t expected_size = 0)
      : style_(style), numbers_(numbers) {
    text_.reserve(expected_size);
  }
  JsonWriter(const JsonWriter&) = delete;
  JsonWriter& operator=(const JsonWriter&) = delete;

  /// Of the one value of the text.
  JsonPlace root() { return JsonPlace(*this); }
  /// The text, once its value is there.
  std::string take();

 private:
  friend class JsonPlace;
  friend class JsonScope;
  void begin_value();
  void append(std::string_view piece);
  void append_text(std::string_view text);
  void append_odd(std::string_view odd, bool is_utf8);
  char* room(std::size_t size);
  void wrote_to(const char* end);
  char* start_line(char* at) const;

  std::string text_{};    ///< longer than what is written
  std::size_t used_ = 0;  ///< characters written
  JsonStyle style_;
  JsonNumbers numbers_;
  std::size_t depth_ = 0;
  std::size_t closing_ = 0;  ///< characters that will close the open scopes
  const JsonScope* innermost_ = nullptr;
  bool has_place_ = true;  ///< a place waits for its value
};

template <typename Items, typename Write, typename... More>
void JsonPlace::list(const Items& items, Write write, const More&... more) {
  JsonArray array(*this);
  for (const auto& item : items) write(array.item(), item, more...);
}

template <typename Items>
void JsonPlace::list(const Items& items) {
  JsonArray array(*this);
  for (const auto& item : items) array.item().put(item);
}

/// What is not known is put as null.
constexpr double number_if(bool known, double value) {
  return known ? value : std::numeric_limits<double>::quiet_NaN();
}
/// For numbers whose 0 says that there is none.
constexpr double above_zero(double value) {
  return number_if(value > 0.0, value);
}

}  // namespace quell::io
