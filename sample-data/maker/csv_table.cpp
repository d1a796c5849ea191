#include "csv_table.hpp"

#include <fstream>
#include <stdexcept>

#include <fmt/format.h>

namespace sparewell::sample {

CsvTable& CsvTable::cell(std::string_view value) {
  if (!first_in_row_) text_ += ',';
  first_in_row_ = false;
  if (value.find_first_of(",\"\r\n") == std::string_view::npos) {
    text_ += value;
    return *this;
  }
  text_ += '"';
  for (const char c : value) {
    if (c == '"') text_ += '"';
    text_ += c;
  }
  text_ += '"';
  return *this;
}

CsvTable& CsvTable::cell(double value) {
  return cell(std::string_view{fmt::format("{:.6g}", value)});
}

void CsvTable::end_row() {
  text_ += "\r\n";
  first_in_row_ = true;
}

void CsvTable::write(const std::filesystem::path& file) const {
  std::ofstream out{file, std::ios::binary | std::ios::trunc};
  out.write(text_.data(), static_cast<std::streamsize>(text_.size()));
  out.close();
  if (!out) throw std::runtime_error{fmt::format("The file {} cannot be written.", file.string())};
}

}  // namespace sparewell::sample
