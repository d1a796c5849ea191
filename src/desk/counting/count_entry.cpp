#include "desk/counting/count_entry.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/papers/count_sheet.hpp"

namespace sparewell::desk {
namespace {

class Reviewer {
 public:
  explicit Reviewer(const store::Snapshot& snapshot) : snapshot_{snapshot} {}

  CountReview review(const CountSheet& sheet) {
    made_.blank = sheet.blank;
    made_.refused = sheet.refused;
    for (const auto& entry : sheet.entries) take(entry);
    std::ranges::stable_sort(made_.refused, {}, &RefusedCount::row);
    return std::move(made_);
  }

 private:
  struct Shelf {
    std::optional<Item> item;
    std::vector<StockLevel> levels;
  };

  const Shelf& shelf_of(const ItemCode& code) {
    const auto [found, is_new] = shelves_.try_emplace(code);
    if (is_new) {
      if (auto row = snapshot_.item(code)) found->second.item = std::move(row->record);
      found->second.levels = snapshot_.shelf_of(code);
    }
    return found->second;
  }

  void refuse_row(const CountEntry& entry, const char* column, std::string reason) {
    made_.refused.push_back({entry.row, column, std::move(reason)});
  }

  void take(CountEntry entry) {
    const auto& shelf = shelf_of(entry.lot.item);
    if (!shelf.item) {
      return refuse_row(entry, count_titles::item,
                        say("the catalogue has no item '{}'; check the code", entry.lot.item.text));
    }
    if (auto reason = settle_use_by(shelf, entry); !reason.empty()) {
      return refuse_row(entry, count_titles::use_by, std::move(reason));
    }
    const auto [first, is_new] = taken_.emplace(std::pair{entry.place, entry.lot}, entry.row);
    if (!is_new) {
      return refuse_row(
          entry, "", say("counts the lot of row {} again; add both up in one row", first->second));
    }
    CountFinding finding;
    for (const auto& level : shelf.levels) {
      if (level.lot == entry.lot && level.place == entry.place) finding.recorded = level.quantity;
    }
    finding.unit_cost = shelf.item->unit_cost;
    finding.moved =
        entry.on_sheet && *entry.on_sheet != finding.recorded && entry.counted != finding.recorded;
    finding.entry = std::move(entry);
    made_.findings.push_back(std::move(finding));
  }

  /// Without a date the lot is meant as it lies there; with one, the date must be the lot's.
  static std::string settle_use_by(const Shelf& shelf, CountEntry& entry) {
    std::vector<std::optional<Date>> here;
    for (const auto& level : shelf.levels) {
      if (level.lot.lot == entry.lot.lot && level.place == entry.place) {
        here.push_back(level.lot.use_by);
      }
    }
    if (here.empty() || std::ranges::find(here, entry.lot.use_by) != here.end()) return {};
    if (entry.lot.use_by) {
      if (!here.front()) {
        return said(
            "the lot lies there with no use-by date recorded; look at the part, and name that "
            "date");
      }
      return say("the lot lies there with the use-by date {}; look at the part, and name that date",
                 iso_text(*here.front()));
    }
    if (here.size() > 1)
      return said("several use-by dates of this lot lie there; name the one counted");
    entry.lot.use_by = here.front();
    return {};
  }

  const store::Snapshot& snapshot_;
  CountReview made_;
  std::map<ItemCode, Shelf> shelves_;
  std::map<std::pair<std::string, Lot>, int> taken_;
};

std::string reason_of(const CountFinding& finding, const CountBooking& booking, Date today) {
  auto reason = fmt::format("count of {} by {}", iso_text(today), booking.counted_by);
  if (!finding.entry.remark.empty()) reason += fmt::format(": {}", finding.entry.remark);
  return reason;
}

void book(store::UnitOfWork& work, CountFinding& finding, const CountBooking& booking, Date today) {
  const auto& entry = finding.entry;
  work.record_count({entry.lot, entry.place, today, finding.recorded, entry.counted,
                     booking.counted_by, entry.remark});
  if (finding.difference() != 0) {
    work.record({entry.lot, entry.place, MovementKind::count_correction, finding.difference(),
                 today, reason_of(finding, booking, today)});
  }
  finding.booked = true;
}

}  // namespace

std::optional<Money> CountFinding::value() const {
  if (!unit_cost) return std::nullopt;
  return *unit_cost * difference();
}

int CountReview::differing() const {
  return static_cast<int>(std::ranges::count_if(
      findings, [](const CountFinding& finding) { return finding.difference() != 0; }));
}

int CountReview::moved() const {
  return static_cast<int>(std::ranges::count_if(findings, &CountFinding::moved));
}

int CountReview::booked() const {
  return static_cast<int>(std::ranges::count_if(findings, &CountFinding::booked));
}

CountReview review_count(const store::Snapshot& snapshot, const CountSheet& sheet) {
  return Reviewer{snapshot}.review(sheet);
}

CountReview book_count(store::Store& store, const CountSheet& sheet, const CountBooking& booking,
                       Date today, const store::Author& author) {
  const auto work = store.begin_write(author);
  auto review = Reviewer{*work}.review(sheet);
  for (auto& finding : review.findings) {
    if (finding.moved && !booking.accept_moved) continue;
    // A sheet that was booked before: its counts are kept already.
    const bool done_before = finding.entry.on_sheet &&
                             *finding.entry.on_sheet != finding.recorded &&
                             finding.difference() == 0;
    if (!done_before) book(*work, finding, booking, today);
  }
  if (review.booked() > 0) work->commit();
  return review;
}

}  // namespace sparewell::desk
