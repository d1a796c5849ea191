#include "exchange/read_table.hpp"

#include <algorithm>

#include "clinic/say.hpp"

namespace sparewell::exchange {

std::optional<Fault> shape_fault(const CsvRow& row, std::size_t columns) {
  if (row.malformed) {
    return Fault{
        "", said("has a quotation mark where none can stand; put the whole field into quotation "
                 "marks and double the marks inside it")};
  }
  if (row.fields.size() < columns) {
    return Fault{"", say("has {} fields, but the header has {}; fill in the missing ones",
                         row.fields.size(), columns)};
  }
  const auto surplus = row.fields.subspan(columns);
  if (std::ranges::any_of(surplus, [](const std::string& f) { return !trimmed(f).empty(); })) {
    return Fault{"", say("has {} fields, but the header has {}; put a field that holds the "
                         "separator into quotation marks",
                         row.fields.size(), columns)};
  }
  return std::nullopt;
}

std::string_view cell_at(const CsvRow& row, int position) {
  if (position < 0 || static_cast<std::size_t>(position) >= row.fields.size()) return {};
  return trimmed(row.fields[static_cast<std::size_t>(position)]);
}

}  // namespace sparewell::exchange
