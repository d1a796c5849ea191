#include "desk/counting/count_sheet_file.hpp"

#include <cmath>

#include "clinic/say.hpp"
#include "desk/papers/count_sheet.hpp"
#include "desk/papers/list_cells.hpp"
#include "exchange/cell.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

using exchange::SheetCell;
using exchange::SheetRow;

constexpr int most_pieces = 1'000'000;

/// Where each column stands; empty when it is not there.
struct Columns {
  std::optional<std::size_t> place, item, lot, use_by, recorded, counted, remark;

  [[nodiscard]] bool complete() const { return place && item && lot && counted; }
};

/// As it was written in English or is written in the language of the program.
bool is_title(std::string_view text, const char* english) {
  return same_word(text, english) || same_word(text, said(english));
}
bool is_words(std::string_view text, const char* english) {
  return text == english || text == said(english);
}

Columns columns_of(const SheetRow& row) {
  Columns found;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const auto title = exchange::trimmed(row.cells[i].text);
    const auto is = [&](const char* wanted) { return is_title(title, wanted); };
    if (is(count_titles::place)) found.place = i;
    if (is(count_titles::item)) found.item = i;
    if (is(count_titles::lot)) found.lot = i;
    if (is(count_titles::use_by)) found.use_by = i;
    if (is(count_titles::recorded)) found.recorded = i;
    if (is(count_titles::counted)) found.counted = i;
    if (is(count_titles::remark)) found.remark = i;
  }
  return found;
}

/// A whole number of pieces; the reason why not otherwise.
exchange::Reason read_pieces(const SheetCell& cell, int& into) {
  double value = cell.number;
  if (cell.kind == SheetCell::Kind::text) {
    const exchange::FolderFormat format;
    const Currency none;
    const auto reason = exchange::read_number({exchange::trimmed(cell.text), format, none}, value);
    if (!reason.empty()) return reason;
  } else if (cell.kind != SheetCell::Kind::number) {
    return say("'{}' is not a number of pieces; write digits only", cell.text);
  }
  if (std::floor(value) != value || value < 0 || value > most_pieces) {
    return say("'{}' is not a number of pieces from 0 to {}; correct it",
               exchange::excerpt(cell.text), most_pieces);
  }
  into = static_cast<int>(value);
  return {};
}

class RowReader {
 public:
  RowReader(const Columns& columns, CountSheet& into) : columns_{columns}, into_{into} {}

  void read(const SheetRow& row) {
    CountEntry entry;
    entry.row = row.number;
    if (const auto place = text(row, columns_.place); !place.empty()) place_ = place;
    entry.place = place_;
    entry.lot.item.text = text(row, columns_.item);
    entry.lot.lot = text(row, columns_.lot);
    if (is_words(entry.lot.lot, no_lot_words)) entry.lot.lot.clear();
    entry.remark = text(row, columns_.remark);
    const auto& counted = row.at(*columns_.counted);
    if (exchange::trimmed(counted.text).empty()) {
      if (!entry.lot.item.empty()) ++into_.blank;
      return;
    }
    const auto refused = [&](const char* column, std::string reason) {
      into_.refused.push_back({row.number, column, std::move(reason)});
    };
    if (entry.lot.item.empty()) return refused(count_titles::item, said("is empty; fill it in"));
    if (entry.place.empty()) return refused(count_titles::place, said("is empty; fill it in"));
    if (auto reason = read_pieces(counted, entry.counted); !reason.empty()) {
      return refused(count_titles::counted, std::move(reason));
    }
    if (auto reason = read_recorded(row, entry); !reason.empty()) {
      return refused(count_titles::recorded, std::move(reason));
    }
    if (auto reason = read_use_by(row, entry); !reason.empty()) {
      return refused(count_titles::use_by, std::move(reason));
    }
    for (const auto* words : {&entry.lot.item.text, &entry.lot.lot, &entry.place, &entry.remark}) {
      std::string checked;
      const exchange::FolderFormat format;
      const Currency none;
      if (auto reason = exchange::read_text({*words, format, none}, checked); !reason.empty()) {
        return refused("", std::move(reason));
      }
    }
    into_.entries.push_back(std::move(entry));
  }

 private:
  static std::string text(const SheetRow& row, const std::optional<std::size_t>& column) {
    return column ? std::string{exchange::trimmed(row.at(*column).text)} : std::string{};
  }

  exchange::Reason read_recorded(const SheetRow& row, CountEntry& entry) const {
    if (!columns_.recorded || row.at(*columns_.recorded).blank()) return {};
    int recorded = 0;
    auto reason = read_pieces(row.at(*columns_.recorded), recorded);
    if (reason.empty()) entry.on_sheet = recorded;
    return reason;
  }

  exchange::Reason read_use_by(const SheetRow& row, CountEntry& entry) const {
    if (!columns_.use_by) return {};
    const auto& cell = row.at(*columns_.use_by);
    const auto words = exchange::trimmed(cell.text);
    if (words.empty() || is_words(words, no_date_words)) return {};
    if (cell.kind == SheetCell::Kind::date) {
      entry.lot.use_by = cell.date;
      return {};
    }
    entry.lot.use_by = parse_iso_date(words);
    if (entry.lot.use_by) return {};
    return say("'{}' is not a date; write it as YYYY-MM-DD", exchange::excerpt(words));
  }

  const Columns& columns_;
  CountSheet& into_;
  std::string place_;
};

}  // namespace

Expected<CountSheet> read_count_sheet(const exchange::SheetTable& table) {
  std::optional<Columns> columns;
  for (const auto& row : table.rows) {
    const auto found = columns_of(row);
    if (!found.complete()) continue;
    columns = found;
    break;
  }
  if (!columns) {
    return refuse(
        say("{} has no row with the titles {}, {}, {} and {}; use a sheet that this program wrote.",
            table.name, said(count_titles::place), said(count_titles::item),
            said(count_titles::lot), said(count_titles::counted)));
  }
  CountSheet made;
  RowReader reader{*columns, made};
  bool below = false;
  for (const auto& row : table.rows) {
    if (below) reader.read(row);
    below = below || columns_of(row).complete();
  }
  return made;
}

}  // namespace sparewell::desk
