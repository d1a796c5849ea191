/// Tables of other programs, read by a mapping of their columns to our fields.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/column_mapping.hpp"
#include "exchange/sheet/sheet_table.hpp"

namespace sparewell::exchange {

inline constexpr std::string_view claims_target = "claims";
inline constexpr std::string_view remittance_target = "remittance";

/// A field that a column may be mapped to, and headings by which it is proposed.
struct TableField {
  std::string_view name;
  bool required = false;
  std::vector<std::string_view> headings;
};
/// Of "claims" or "remittance".
[[nodiscard]] const std::vector<TableField>& table_fields(std::string_view target);

/// "service_date=Date of service; code=HCPCS" as the columns of a mapping. A heading in quotation
/// marks, as in payer="Northfield Health", is no heading but stands in every row. Refuses a field
/// that does not exist or is named twice, and required fields that are missing.
[[nodiscard]] Expected<std::vector<std::string>> read_mapping_columns(std::string_view text,
                                                                      std::string_view target);
/// The columns as they are typed.
[[nodiscard]] std::string mapping_text(const ColumnMapping& mapping);

/// A mapping for the row of headings, among the first 40, of which the most are known: by the name
/// of a field or a common heading. Empty columns when none is known; it is never used unseen.
[[nodiscard]] ColumnMapping propose_mapping(const SheetTable& table, std::string_view target);
/// Whether the table has our own names as headings, all that are required, and so needs no mapping.
[[nodiscard]] bool has_own_headings(const SheetTable& table, std::string_view target);

/// The rows below the headings.
class MappedTable {
 public:
  /// Refuses, in one sentence that begins with the table's name: a mapping for another target, a
  /// date pattern that is none, headings that stand in no row of the first 40, or several times.
  [[nodiscard]] static Expected<MappedTable> open(const SheetTable& table,
                                                  const ColumnMapping& mapping);

  [[nodiscard]] const std::vector<const SheetRow*>& rows() const { return rows_; }
  [[nodiscard]] const FolderFormat& format() const { return format_; }
  [[nodiscard]] bool has(std::string_view field) const;
  /// The cell of a field; a blank one where the mapping names no column for it.
  [[nodiscard]] const SheetCell& cell(const SheetRow& row, std::string_view field) const;
  /// Whether the rows were refused before and have been corrected since.
  [[nodiscard]] bool holds_rejects() const { return rejected_line_.has_value(); }
  /// The line of the row in the file that it was refused from first, else its own.
  [[nodiscard]] int first_line(const SheetRow& row) const;
  /// Headings that no field is read from.
  [[nodiscard]] const std::vector<std::string>& ignored() const { return ignored_; }

 private:
  std::vector<const SheetRow*> rows_;
  FolderFormat format_;
  std::map<std::string, std::size_t, std::less<>> columns_;
  std::map<std::string, SheetCell, std::less<>> fixed_;
  std::vector<std::string> ignored_;
  std::optional<std::size_t> rejected_line_;  ///< its column
};

}  // namespace sparewell::exchange
