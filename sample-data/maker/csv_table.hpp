/// One CSV file as RFC 4180 has it: a header, CRLF line ends, quotes where they are needed.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "clinic/date.hpp"
#include "clinic/money.hpp"

namespace sparewell::sample {

class CsvTable {
 public:
  /// `header` is written as it is, columns separated by commas.
  explicit CsvTable(std::string_view header) : text_{header} { text_ += "\r\n"; }

  CsvTable& cell(std::string_view value);
  CsvTable& cell(int value) { return cell(std::string_view{std::to_string(value)}); }
  CsvTable& cell(Date value) { return cell(std::string_view{iso_text(value)}); }
  CsvTable& cell(const Money& value) { return cell(std::string_view{plain_text(value)}); }
  CsvTable& cell(double value);
  template <class Value>
  CsvTable& cell(const std::optional<Value>& value) {
    return value ? cell(*value) : cell(std::string_view{});
  }
  void end_row();

  /// Throws std::runtime_error when the file cannot be written.
  void write(const std::filesystem::path& file) const;

 private:
  std::string text_;
  bool first_in_row_ = true;
};

}  // namespace sparewell::sample
