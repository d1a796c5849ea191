#include "desk/import/stock_count.hpp"

#include <map>
#include <set>
#include <unordered_map>
#include <unordered_set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/import/natural_keys.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::desk {
namespace {

using exchange::StockCount;

struct CountedRow {
  int line = 0;
  StockCount count;
  std::optional<exchange::Fault> fault;
  exchange::Reject source;  ///< the row as written
};

struct CountedLot {
  StockCount total;
  int rows = 0;
};

std::string item_at_place(const ItemCode& item, std::string_view place) {
  return joined_key({item.text, place});
}

class StockCountImport {
 public:
  explicit StockCountImport(FileImport& run)
      : run_{run}, main_place_{run.work.settings().main_place} {
    for (const auto& level : run.work.shelf()) {
      auto key = stock_key(level.lot, level.place);
      if (!level.lot.lot.empty()) {
        use_bys_[joined_key({level.lot.item.text, level.lot.lot})].insert(level.lot.use_by);
      }
      shelf_.emplace(std::move(key), level);
    }
    for (const auto& movement : run.work.movements()) known_items_.insert(movement.lot.item);
  }

  bool read_rows();
  void refuse_incomplete_lots();
  void record_counts();
  void empty_unlisted_lots();

 private:
  void take(exchange::ParsedRow<StockCount>& row);
  void adopt_use_by(CountedRow& row);
  void count_row(const CountedLot& lot);
  void note_left(const std::vector<const StockLevel*>& left);

  FileImport& run_;
  std::string main_place_;
  std::map<std::string, StockLevel> shelf_;                                 ///< by lot and place
  std::unordered_map<std::string, std::set<std::optional<Date>>> use_bys_;  ///< by item and lot
  std::unordered_set<ItemCode> known_items_;                                ///< with any movement
  std::vector<CountedRow> rows_;
  std::set<std::string> counted_;            ///< lots at places that the file lists
  std::set<std::string> mentioned_;          ///< items at places that the file mentions
  std::unordered_set<ItemCode> incomplete_;  ///< items with a refused row
  bool unknown_item_refused_ = false;        ///< a refused row names no item
};

bool StockCountImport::read_rows() {
  const exchange::CurrencyOf no_amounts;
  const exchange::TableReader<StockCount> reader{run_.file, exchange::stock_table(),
                                                 run_.options.format, no_amounts};
  reader.read([&](exchange::ParsedRow<StockCount>& row) {
    run_.cancelled = !run_.progress.go_on(row.done);
    if (!run_.cancelled) take(row);
    return !run_.cancelled;
  });
  return !run_.cancelled;
}

void StockCountImport::take(exchange::ParsedRow<StockCount>& row) {
  ++run_.report.rows;
  CountedRow counted{row.source.line, row.record, std::move(row.fault), {}};
  counted.source.line = row.source.line;
  if (row.fits_header) {
    counted.source.fields.assign(row.source.fields.begin(), row.source.fields.end());
  } else {
    counted.source.text = row.source.text;
  }
  if (counted.count.place.empty()) counted.count.place = main_place_;
  if (!counted.fault) counted.fault = run_.references.unknown(counted.count.lot.item);
  adopt_use_by(counted);
  if (counted.fault) {
    incomplete_.insert(counted.count.lot.item);
    unknown_item_refused_ = unknown_item_refused_ || counted.count.lot.item.empty();
  }
  rows_.push_back(std::move(counted));
}

/// A count that gives no use-by date means the lot as it is known.
void StockCountImport::adopt_use_by(CountedRow& row) {
  auto& lot = row.count.lot;
  if (row.fault || lot.use_by || lot.lot.empty()) return;
  const auto known = use_bys_.find(joined_key({lot.item.text, lot.lot}));
  if (known == use_bys_.end() || known->second.size() != 1) return;
  lot.use_by = *known->second.begin();
  if (lot.use_by) {
    run_.doubt(row.line, say("the use-by date {} of lot '{}' is kept", iso_text(*lot.use_by),
                             exchange::excerpt(lot.lot)));
  }
}

/// A lot is counted whole or not at all: rows beside a refused row of the same lot wait with it,
/// so that both are summed when it has been corrected.
void StockCountImport::refuse_incomplete_lots() {
  std::unordered_map<std::string, int> spoiled;
  const auto key = [](const CountedRow& row) {
    return joined_key({row.count.lot.item.text, row.count.lot.lot, row.count.place});
  };
  for (const auto& row : rows_) {
    if (row.fault && !row.count.lot.item.empty()) spoiled.emplace(key(row), row.line);
  }
  for (auto& row : rows_) {
    if (row.fault) continue;
    if (const auto found = spoiled.find(key(row)); found != spoiled.end()) {
      row.fault = exchange::Fault{
          "", say("counts the same lot as line {}, which is refused; correct that one, and "
                  "both are summed",
                  found->second)};
    }
  }
  for (auto& row : rows_) {
    if (!row.fault) continue;
    row.source.fault = *row.fault;
    run_.refuse(std::move(row.source));
  }
}

void StockCountImport::record_counts() {
  std::vector<CountedLot> lots;
  std::unordered_map<std::string, std::size_t> positions;
  for (const auto& row : rows_) {
    if (row.fault) continue;
    auto key = stock_key(row.count.lot, row.count.place);
    const auto [found, is_new] = positions.emplace(key, lots.size());
    if (is_new) {
      lots.push_back({row.count, 1});
      counted_.insert(std::move(key));
      mentioned_.insert(item_at_place(row.count.lot.item, row.count.place));
    } else {
      lots[found->second].total.quantity += row.count.quantity;
      ++lots[found->second].rows;
    }
  }
  for (const auto& lot : lots) count_row(lot);
}

void StockCountImport::count_row(const CountedLot& lot) {
  const auto stored = shelf_.find(stock_key(lot.total.lot, lot.total.place));
  const int before = stored == shelf_.end() ? 0 : stored->second.quantity;
  const int difference = lot.total.quantity - before;
  if (difference == 0) {
    run_.report.unchanged += lot.rows;
    return;
  }
  (stored == shelf_.end() ? run_.report.added : run_.report.changed) += lot.rows;
  const bool first = !known_items_.contains(lot.total.lot.item);
  run_.work.record({lot.total.lot, lot.total.place,
                    first ? MovementKind::receipt : MovementKind::count_correction, difference,
                    run_.options.today, fmt::format("count in {}", run_.report.file)});
  run_.wrote = true;
}

void StockCountImport::empty_unlisted_lots() {
  const bool may_empty = !run_.file.holds_rejects() && !unknown_item_refused_;
  std::vector<const StockLevel*> left;
  for (const auto& [key, level] : shelf_) {
    if (counted_.contains(key)) continue;
    if (!may_empty || incomplete_.contains(level.lot.item) ||
        !mentioned_.contains(item_at_place(level.lot.item, level.place))) {
      left.push_back(&level);
      continue;
    }
    run_.work.record({level.lot, level.place, MovementKind::count_correction, -level.quantity,
                      run_.options.today, fmt::format("not listed in {}", run_.report.file)});
    run_.wrote = true;
    run_.report.notes.push_back(say(
        "Lot '{}' of {} at {} is not listed: {} corrected to 0.", exchange::excerpt(level.lot.lot),
        exchange::excerpt(level.lot.item.text), exchange::excerpt(level.place), level.quantity));
  }
  note_left(left);
}

void StockCountImport::note_left(const std::vector<const StockLevel*>& left) {
  if (left.empty()) return;
  std::set<std::string> items;
  for (const auto* level : left) items.insert(level->lot.item.text);
  constexpr std::size_t most = 5;
  std::string names;
  std::size_t named = 0;
  for (const auto& item : items) {
    if (named == most) break;
    names += (named++ == 0 ? "" : ", ") + exchange::excerpt(item);
  }
  if (items.size() > most) names += " ...";
  run_.report.notes.push_back(say(
      "Stock that the file does not count was left as it is: {} lots of {}.", left.size(), names));
}

}  // namespace

void import_stock_count(FileImport& run) {
  StockCountImport import{run};
  if (!import.read_rows()) return;
  import.refuse_incomplete_lots();
  import.record_counts();
  import.empty_unlisted_lots();
}

}  // namespace sparewell::desk
