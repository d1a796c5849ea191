#include "exchange/claim_rows.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "exchange/csv_file.hpp"
#include "exchange/csv_text.hpp"
#include "exchange/folder_files.hpp"
#include "exchange/rejects_file.hpp"

namespace sparewell::exchange {
namespace {

/// The cell of a column; "" where the file has none.
std::string_view cell_of(const ClaimRow& row, const std::string& column) {
  const auto cell = row.cells.find(column);
  return cell == row.cells.end() ? std::string_view{} : std::string_view{cell->second};
}

}  // namespace

std::optional<Fault> read_claim_row(const ClaimRow& row, const Currency& currency,
                                    ClaimLine& into) {
  if (row.fault) return row.fault;
  const auto& table = claims_table();
  const FolderFormat format;
  if (table.start) table.start(into, currency);
  for (const auto& column : table.columns) {
    const auto text = cell_of(row, column.name);
    if (!text.empty()) {
      auto reason = column.read(into, {text, format, currency});
      if (!reason.empty()) return Fault{column.name, std::move(reason)};
    } else if (column.need == Need::required) {
      return Fault{column.name, said("is empty; fill it in")};
    }
  }
  return table.check ? table.check(into) : std::nullopt;
}

std::string claim_rejects_text(const std::vector<ClaimRow>& rows) {
  const auto& table = claims_table();
  std::vector<ColumnSpec> specs;
  std::string header;
  for (const auto& column : table.columns) {
    specs.push_back({column.name, false});
    header += column.name;
    header += ',';
  }
  header.back() = '\n';
  const auto file = CsvFile::open(table.file, header, {}, specs);
  std::vector<Reject> rejects;
  for (const auto& row : rows) {
    auto& made = rejects.emplace_back();
    made.line = row.at;
    if (row.fault) made.fault = *row.fault;
    for (const auto& column : table.columns) made.fields.emplace_back(cell_of(row, column.name));
  }
  return rejects_text(*file, rejects);
}

}  // namespace sparewell::exchange
