#include "desk/embedded_table.hpp"

#include <stdexcept>

#include <fmt/format.h>

#include "exchange/csv_reader.hpp"

namespace sparewell::desk {

void for_each_table_row(std::string_view file, std::string_view text, std::size_t columns,
                        const std::function<bool(std::span<const std::string>)>& take) {
  bool header = true;
  exchange::read_csv(text, ',', [&](const exchange::CsvRow& row) {
    const bool usable = row.fields.size() == columns && (header || take(row.fields));
    if (!usable) throw std::logic_error{fmt::format("{}, line {} cannot be used", file, row.line)};
    header = false;
    return true;
  });
}

}  // namespace sparewell::desk
