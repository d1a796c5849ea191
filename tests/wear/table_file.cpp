#include "wear/table_file.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>

#include <csv.h>

namespace sparewell::testing {
namespace {

using Table = std::vector<std::vector<std::string>>;

void end_cell(void* text, std::size_t length, void* table) {
  static_cast<Table*>(table)->back().emplace_back(static_cast<const char*>(text), length);
}

void end_row(int, void* table) {
  static_cast<Table*>(table)->emplace_back();
}

}  // namespace

Table read_table(const std::string& file) {
  std::ifstream in{std::string{SPAREWELL_SOURCE_DIR} + "/" + file, std::ios::binary};
  if (!in) throw std::runtime_error{"Cannot read " + file};
  const std::string text{std::istreambuf_iterator<char>{in}, {}};
  Table table{1};
  csv_parser parser;
  csv_init(&parser, CSV_STRICT | CSV_APPEND_NULL);
  const std::size_t read = csv_parse(&parser, text.data(), text.size(), end_cell, end_row, &table);
  csv_fini(&parser, end_cell, end_row, &table);
  csv_free(&parser);
  if (read != text.size()) throw std::runtime_error{"Not a CSV file: " + file};
  table.pop_back();
  return table;
}

}  // namespace sparewell::testing
