#include "exchange/csv_reader.hpp"

#include <algorithm>
#include <new>
#include <vector>

#include <csv.h>

namespace sparewell::exchange {
namespace {

/// The length of the line that begins `text`, with its line end.
std::size_t line_length(std::string_view text) {
  const std::size_t end = text.find_first_of("\r\n");
  if (end == std::string_view::npos) return text.size();
  return end + (text.substr(end).starts_with("\r\n") ? 2 : 1);
}

std::string_view without_line_end(std::string_view text) {
  while (!text.empty() && (text.back() == '\n' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

/// The fields of the row being read. Strings are reused from row to row.
class Fields {
 public:
  void clear() {
    count_ = 0;
    ended_ = false;
  }
  void add(std::string_view field) {
    if (count_ == fields_.size()) fields_.emplace_back();
    fields_[count_++].assign(field);
  }
  void end() { ended_ = true; }
  [[nodiscard]] bool ended() const { return ended_; }
  [[nodiscard]] std::span<const std::string> all() const { return {fields_.data(), count_}; }
  [[nodiscard]] bool blank() const {
    return std::ranges::all_of(all(), [](const std::string& field) { return field.empty(); });
  }

 private:
  std::vector<std::string> fields_;
  std::size_t count_ = 0;
  bool ended_ = false;
};

extern "C" void add_field(void* field, std::size_t size, void* fields) {
  static_cast<Fields*>(fields)->add({static_cast<const char*>(field), size});
}

extern "C" void end_row(int, void* fields) {
  static_cast<Fields*>(fields)->end();
}

/// Owns one libcsv parser.
class Parser {
 public:
  explicit Parser(char separator) : separator_{static_cast<unsigned char>(separator)} { start(); }
  ~Parser() { csv_free(&parser_); }
  Parser(const Parser&) = delete;
  Parser& operator=(const Parser&) = delete;

  void restart() {
    csv_free(&parser_);
    start();
  }
  /// False when quotation marks are misplaced.
  bool feed(std::string_view line, Fields& fields) {
    const auto taken = csv_parse(&parser_, line.data(), line.size(), add_field, end_row, &fields);
    if (csv_error(&parser_) == CSV_ENOMEM) throw std::bad_alloc{};
    return taken == line.size();
  }
  /// False when a quoted field is still open.
  bool finish(Fields& fields) { return csv_fini(&parser_, add_field, end_row, &fields) == 0; }

 private:
  void start() {
    // CSV_REPALL_NL reports blank lines as well, so that every line that ends a row is seen.
    if (csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI | CSV_REPALL_NL) != 0)
      throw std::bad_alloc{};
    csv_set_delim(&parser_, separator_);
  }

  unsigned char separator_;
  csv_parser parser_{};
};

}  // namespace

CsvEnd read_csv(std::string_view text, char separator,
                const std::function<bool(const CsvRow&)>& take, int first_line) {
  Parser parser{separator};
  Fields fields;
  CsvEnd end;
  std::size_t row_at = 0;
  int row_line = first_line;
  std::size_t at = 0;
  int line = first_line;
  bool wanted = true;
  const auto give = [&](bool malformed) {
    if (!malformed && fields.blank()) return true;
    end.last_line = row_line;
    return take(CsvRow{row_line, malformed ? std::span<const std::string>{} : fields.all(),
                       without_line_end(text.substr(row_at, at - row_at)), malformed});
  };
  const auto next_row = [&] {
    fields.clear();
    row_at = at;
    row_line = line;
  };
  while (wanted && at < text.size()) {
    const std::size_t length = line_length(text.substr(at));
    const bool well_formed = parser.feed(text.substr(at, length), fields);
    at += length;
    ++line;
    if (!well_formed) {
      // The rows after the one with the stray mark are sound: go back to the line after it.
      at = row_at + line_length(text.substr(row_at));
      line = row_line + 1;
      parser.restart();
      wanted = give(true);
      next_row();
    } else if (fields.ended()) {
      wanted = give(false);
      next_row();
    }
  }
  if (!wanted) return end;
  if (row_at < text.size()) {
    if (parser.finish(fields)) {
      end.without_line_end = give(false) && end.last_line == row_line;
    } else {
      end.open_quote_line = row_line;
    }
  }
  return end;
}

}  // namespace sparewell::exchange
