#include "desk/printing/printable.hpp"

#include "desk/wording.hpp"

namespace sparewell::desk {

PrintedTable printed(const Table& table, std::string title, std::string empty_words) {
  PrintedTable made{std::move(title), table.columns(), {}, std::move(empty_words)};
  made.rows.reserve(table.size());
  for (std::size_t i = 0; i < table.size(); ++i) {
    const auto& row = table.at(i);
    PrintedRow copy{{}, row.strong};
    for (const auto& cell : row.cells) copy.cells.push_back(cell.text);
    made.rows.push_back(std::move(copy));
  }
  return made;
}

Printable printable_of(const Day& day, std::string title, std::vector<PrintedTable> tables,
                       std::vector<std::string> notes) {
  return {std::move(title), day.clinic().settings.name, day_words(day.today()), std::move(notes),
          std::move(tables)};
}

}  // namespace sparewell::desk
