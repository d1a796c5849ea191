#include "exchange/rejects_file.hpp"

#include <algorithm>
#include <string_view>

#include <csv.h>

#include "clinic/words.hpp"
#include "exchange/read_table.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

bool needs_quotes(std::string_view field, char separator) {
  if (field.empty()) return false;
  if (field.front() == ' ' || field.back() == ' ') return true;
  return std::ranges::any_of(field, [&](char c) {
    return c == separator || c == '"' || c == '\n' || c == '\r' || c == '\t';
  });
}

/// Collects fields into lines.
class Lines {
 public:
  explicit Lines(char separator) : separator_{separator} {}

  void field(std::string_view text) {
    if (!at_start_) text_ += separator_;
    at_start_ = false;
    if (!needs_quotes(text, separator_)) {
      text_ += text;
      return;
    }
    const std::size_t size = csv_write(nullptr, 0, text.data(), text.size());
    const std::size_t at = text_.size();
    text_.resize(at + size);
    csv_write(text_.data() + at, size, text.data(), text.size());
  }
  void end_line() {
    text_ += "\r\n";
    at_start_ = true;
  }
  [[nodiscard]] std::string take() && { return std::move(text_); }

 private:
  char separator_;
  bool at_start_ = true;
  std::string text_;
};

bool is_rejects_column(std::string_view name) {
  return same_word(name.substr(0, 9), "rejected_");
}

}  // namespace

std::string rejects_text(const CsvFile& source, const std::vector<Reject>& rejects) {
  const auto& header = source.header();
  const int copy_at = source.position_of(copy_column);
  const bool add_copy =
      copy_at < 0 && std::ranges::any_of(rejects, [](const Reject& r) { return r.copy > 0; });
  Lines lines{source.separator()};
  for (const auto& name : header) {
    if (!is_rejects_column(name)) lines.field(name);
  }
  if (add_copy) lines.field(copy_column);
  const bool add_alike =
      std::ranges::any_of(rejects, [](const Reject& r) { return !r.alike.empty(); });
  for (const auto name : {rejected_line_column, rejected_column_column, rejected_reason_column,
                          rejected_text_column}) {
    lines.field(name);
  }
  if (add_alike) lines.field(rejected_alike_column);
  lines.end_line();
  for (const auto& reject : rejects) {
    const std::string copy = reject.copy > 0 ? std::to_string(reject.copy) : std::string{};
    for (std::size_t i = 0; i < header.size(); ++i) {
      if (is_rejects_column(header[i])) continue;
      const std::string_view field =
          i < reject.fields.size() ? std::string_view{reject.fields[i]} : std::string_view{};
      const bool fill_copy = static_cast<int>(i) == copy_at && trimmed(field).empty();
      lines.field(fill_copy ? std::string_view{copy} : field);
    }
    if (add_copy) lines.field(copy);
    lines.field(std::to_string(reject.line));
    lines.field(reject.fault.column);
    lines.field(reject.fault.reason);
    lines.field(reject.text);
    if (add_alike) lines.field(reject.alike);
    lines.end_line();
  }
  std::string start = source.has_byte_order_mark() ? "\xEF\xBB\xBF" : "";
  if (source.has_separator_line()) start += std::string{"sep="} + source.separator() + "\r\n";
  return start + std::move(lines).take();
}

}  // namespace sparewell::exchange
