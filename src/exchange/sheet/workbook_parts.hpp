/// What the parts of a workbook besides its sheets say: where sheets are, texts, which numbers are
/// dates (ECMA-376, part 1, SpreadsheetML).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pugixml.hpp>

#include "exchange/sheet/zip_parts.hpp"

namespace sparewell::exchange {

/// The name without a namespace prefix, which some programs write.
[[nodiscard]] std::string_view local_name(const pugi::xml_node& node);
/// The first child of that local name; an empty node when there is none.
[[nodiscard]] pugi::xml_node child_of(const pugi::xml_node& node, std::string_view name);

struct WorkbookParts {
  std::string sheet_part;  ///< of the sheet that was asked for
  std::vector<std::string> texts;
  std::vector<bool> date_styles;  ///< by the cell's style number
  bool from_1904 = false;         ///< days count from 1904-01-01
};

/// `sheet` is "" for the first one that is a table of cells.
[[nodiscard]] Expected<WorkbookParts> read_workbook_parts(const ZipParts& parts,
                                                          const std::string& name,
                                                          const std::string& sheet);

/// Parses one part. Refuses XML that is damaged.
[[nodiscard]] Expected<pugi::xml_document> parse_part(const std::string& name,
                                                      const std::string& text);

/// The text of a shared or inline string: its runs together, without reading aids for
/// pronunciation; "_x000D_" and its like are the characters they stand for.
[[nodiscard]] std::string string_of(const pugi::xml_node& item);

/// Whether a number format shows a day or time: it names y, m, d, h or s outside quotation marks,
/// brackets and escapes.
[[nodiscard]] bool is_date_format(std::string_view code);

}  // namespace sparewell::exchange
