#include "desk/row_words.hpp"

#include <fmt/format.h>

namespace sparewell::desk {

std::string row_words(const Table& table, const std::string& id) {
  const auto position = table.position_of(id);
  if (!position) return {};
  const auto& cells = table.at(*position).cells;
  std::string lines;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (cells[i].text.empty()) continue;
    lines +=
        fmt::format("{}{}: {}", lines.empty() ? "" : "\n", table.columns()[i].title, cells[i].text);
  }
  return lines;
}

}  // namespace sparewell::desk
