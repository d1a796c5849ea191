#include "exchange/sheet/sheet_table.hpp"

#include <algorithm>
#include <system_error>

#include <utf8.h>

#include "clinic/say.hpp"
#include "exchange/csv_reader.hpp"
#include "exchange/csv_text.hpp"
#include "exchange/sheet/sheet_cells.hpp"
#include "exchange/sheet/zip_parts.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

using namespace std::string_view_literals;

Expected<SheetTable> read_workbook(const std::string& name, const std::string& bytes,
                                   const std::string& sheet, const SheetLimits& limits) {
  const auto parts = ZipParts::open(name, bytes, limits.part_bytes);
  if (!parts) return tl::unexpected(parts.error());
  const auto book = read_workbook_parts(*parts, name, sheet);
  if (!book) return tl::unexpected(book.error());
  const auto text = parts->read(book->sheet_part);
  if (!text) return tl::unexpected(text.error());
  if (!*text) {
    return refuse(say("{} is damaged: its sheet is missing; save it anew.", name));
  }
  const auto document = parse_part(name, **text);
  if (!document) return tl::unexpected(document.error());
  return read_cells(*document, *book, name, limits);
}

Expected<SheetTable> read_text(const std::string& name, const std::string& bytes,
                               const FolderFormat& format, const SheetLimits& limits) {
  const auto text = check_csv_text(name, bytes);
  if (!text) return tl::unexpected(text.error());
  SheetTable table;
  table.name = name;
  std::string refusal;
  std::size_t cells = 0;
  const auto end = read_csv(text->text, format.separator, [&](const CsvRow& row) {
    if (row.malformed) {
      refusal =
          say("{} has misplaced quotation marks in line {}; correct that line.", name, row.line);
      return false;
    }
    SheetRow made;
    made.number = row.line;
    for (const auto& field : row.fields) {
      const auto words = trimmed(field);
      SheetCell cell;
      if (!words.empty()) cell = {SheetCell::Kind::text, std::string{words}, 0, {}};
      made.cells.push_back(std::move(cell));
    }
    cells += made.cells.size();
    table.rows.push_back(std::move(made));
    if (cells <= limits.cells) return true;
    refusal = say("{} has more than {} cells; it was not read.", name, limits.cells);
    return false;
  });
  if (refusal.empty() && end.open_quote_line > 0) {
    refusal = say("{} has a quoted field from line {} on that never ends; correct it.", name,
                  end.open_quote_line);
  }
  if (!refusal.empty()) return refuse(std::move(refusal));
  return table;
}

/// Bytes that are no UTF-8 must not reach the clinic file or a screen.
void mend_text(SheetTable& table) {
  for (auto& row : table.rows) {
    for (auto& cell : row.cells) {
      if (!utf8::is_valid(cell.text.begin(), cell.text.end())) {
        cell.text = utf8::replace_invalid(cell.text);
      }
    }
  }
}

}  // namespace

const SheetCell& SheetRow::at(std::size_t column) const {
  static const SheetCell nothing;
  return column < cells.size() ? cells[column] : nothing;
}

std::string column_letters(std::size_t column) {
  std::string made;
  for (std::size_t rest = column + 1; rest > 0; rest = (rest - 1) / 26) {
    made += static_cast<char>('A' + (rest - 1) % 26);
  }
  std::ranges::reverse(made);
  return made;
}

Expected<SheetTable> read_sheet_bytes(const std::string& name, const std::string& bytes,
                                      const std::string& sheet, const FolderFormat& format,
                                      const SheetLimits& limits) {
  if (bytes.starts_with("\xD0\xCF\x11\xE0"sv)) {
    return refuse(
        say("{} is protected by a password or an old .xls workbook; save it as .xlsx "
            "without a password and try again.",
            name));
  }
  if (!bytes.starts_with("PK"sv)) return read_text(name, bytes, format, limits);
  auto table = read_workbook(name, bytes, sheet, limits);
  if (table) mend_text(*table);
  return table;
}

Expected<SheetTable> read_sheet(const std::filesystem::path& file, const std::string& sheet,
                                const FolderFormat& format, const SheetLimits& limits) {
  const auto name = file.filename().string();
  std::error_code unknown;
  const auto size = std::filesystem::file_size(file, unknown);
  if (!unknown && size > limits.file_bytes) {
    return refuse(
        say("{} is larger than {} MiB; it was not read.", name, limits.file_bytes >> 20U));
  }
  if (std::filesystem::is_directory(file, unknown)) {
    return refuse(say("{} is a folder; choose a file.", name));
  }
  const auto bytes = read_bytes(file);
  if (!bytes) return tl::unexpected(bytes.error());
  return read_sheet_bytes(name, *bytes, sheet, format, limits);
}

}  // namespace sparewell::exchange
