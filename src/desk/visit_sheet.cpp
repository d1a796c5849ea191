#include "desk/visit_sheet.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "desk/booking_rows.hpp"
#include "desk/issue_check.hpp"
#include "desk/papers/paper_parts.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/taken_spares.hpp"
#include "desk/usage_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// "lot A12 (use by 3 Mar 2028) at main store".
std::string place_words(const StockLevel& level, int wanted) {
  auto words = level.lot.lot.empty() ? std::string{"without a lot number"}
                                     : fmt::format("lot {}", level.lot.lot);
  if (level.lot.use_by) words += fmt::format(" (use by {})", date_words(*level.lot.use_by));
  words += fmt::format(" at {}", level.place);
  return level.quantity == wanted ? words : fmt::format("{} of {}", level.quantity, words);
}

/// Where the pieces lie, and how many do not.
std::string take_words(const BenchPieces& pieces) {
  std::vector<std::string> parts;
  for (const auto& level : pieces.take) parts.push_back(place_words(level, pieces.quantity));
  const int missing = pieces.missing();
  if (missing > 0) {
    parts.push_back(missing == pieces.quantity ? "not on the shelf"
                                               : fmt::format("{} not on the shelf", missing));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

class Preparation {
 public:
  Preparation(const Day& day, Date on)
      : day_{day},
        on_{on},
        shelf_{day.clinic().shelf},
        servings_{bookings_of(day.clinic(), "", day.today())} {
    for (const auto& life : day.assessment().lives) {
      if (life.next_item) next_items_.emplace(life.unit, *life.next_item);
    }
  }

  [[nodiscard]] VisitSheet sheet_of(const PatientRef& patient, const std::string& reason) {
    const auto& clinic = day_.clinic();
    VisitSheet sheet;
    sheet.patient = patient;
    sheet.reason = reason;
    if (const auto* known = day_.index().patient(patient)) sheet.name = full_name(*known);
    for (auto& words : prosthesis_words(clinic, patient)) sheet.prostheses.push_back(words);
    sheet.sensitivities = sensitivity_words(clinic, patient);
    sheet.sensitive = std::ranges::any_of(
        clinic.sensitivities, [&](const auto& noted) { return noted.patient == patient; });
    sheet.findings = visit_findings(day_, patient, on_);
    add_near_end(sheet);
    add_booked(sheet);
    add_replacements(sheet);
    return sheet;
  }

 private:
  [[nodiscard]] bool near_end(const Forecast& forecast) const {
    const Date horizon = on_ + near_end_days;
    return (forecast.p10 && *forecast.p10 <= horizon) ||
           (forecast.order_by && *forecast.order_by < day_.today()) ||
           (forecast.use_by && forecast.use_by->day <= horizon);
  }

  /// The day that sorts parts by what comes first.
  [[nodiscard]] Date first_day(std::size_t unit) const {
    const auto* forecast = day_.forecast(unit);
    const Date late = Date::max();
    return std::min(forecast->p10.value_or(late), forecast->use_by ? forecast->use_by->day : late);
  }

  void add_near_end(VisitSheet& sheet) const {
    for (auto& part : parts_in_use(day_.clinic(), day_.index(), sheet.patient, on_)) {
      std::erase_if(part.units, [&](std::size_t unit) {
        const auto* forecast = day_.forecast(unit);
        return forecast == nullptr || !near_end(*forecast);
      });
      if (part.units.empty()) continue;
      std::ranges::stable_sort(part.units, {}, [&](auto unit) { return first_day(unit); });
      auto words = life_of_part(day_, part.units.front());
      if (part.units.size() > 1) {
        words = fmt::format("{} pieces alike, the first to end: {}", part.units.size(), words);
      }
      words += fmt::format(" Item {}, {}.", part.item.text,
                           lot_words(day_.clinic().units[part.units.front()]));
      sheet.near_end.push_back({part.units, std::move(words)});
    }
    std::ranges::stable_sort(sheet.near_end, {},
                             [&](const NearEnd& each) { return first_day(each.units.front()); });
  }

  void add_booked(VisitSheet& sheet) {
    for (const auto& serving : servings_) {
      const auto& booking = *serving.booking;
      if (booking.patient != sheet.patient || booking.needed_on.value_or(on_) > on_) continue;
      BenchPieces pieces;
      pieces.item = booking.item;
      pieces.quantity = booking.quantity;
      pieces.booked = true;
      pieces.take =
          take_spares(shelf_, day_.clinic(), booking.item, sheet.patient, booking.quantity, on_);
      pieces.words = fmt::format("Booked: {}: {}.", pieces_words(booking.quantity, booking.item),
                                 take_words(pieces));
      if (pieces.missing() > 0) {
        pieces.words += fmt::format(" Of the booking: {}.", serving_words(serving, day_.today()));
      }
      sheet.bench.push_back(std::move(pieces));
    }
  }

  /// For each part near its end one like it, or the size that follows, unless it is booked anyway.
  void add_replacements(VisitSheet& sheet) {
    std::map<std::pair<Side, ItemCode>, int> wanted;
    for (const auto& part : sheet.near_end) {
      for (const auto unit : part.units) {
        const auto& worn = day_.clinic().units[unit];
        const auto next = next_items_.find(unit);
        ++wanted[{worn.side, next == next_items_.end() ? worn.item : next->second}];
      }
    }
    std::map<ItemCode, int> booked;
    for (const auto& pieces : sheet.bench) booked[pieces.item] += pieces.quantity;
    for (const auto& [what, quantity] : wanted) {
      const auto& [side, item] = what;
      const int covered = std::min(quantity, booked[item]);
      booked[item] -= covered;
      if (quantity > covered)
        sheet.bench.push_back(replacement(sheet, side, item, quantity - covered));
    }
  }

  [[nodiscard]] BenchPieces replacement(const VisitSheet& sheet, Side side, const ItemCode& item,
                                        int quantity) {
    BenchPieces pieces;
    pieces.item = item;
    pieces.quantity = quantity;
    const auto name = fmt::format("{}, {}", pieces_words(quantity, item), word(side));
    IssueQuestion question;
    question.patient = sheet.patient;
    question.side = side;
    question.item = item;
    question.day = on_;
    if (const auto check = check_without_piece(day_.clinic(), question)) {
      pieces.stopped = words_of(*check, care::Gravity::stops);
    }
    if (!pieces.stopped.empty()) {
      pieces.words =
          fmt::format("Not another {} unless a clinician decides so: {}", name, pieces.stopped);
      return pieces;
    }
    pieces.take = take_spares(shelf_, day_.clinic(), item, sheet.patient, quantity, on_);
    pieces.words = fmt::format("Replacement: {}: {}.", name, take_words(pieces));
    return pieces;
  }

  /// "2 of LS10-28, Locking liner, size 28".
  [[nodiscard]] std::string pieces_words(int quantity, const ItemCode& code) const {
    const auto* item = day_.index().item(code);
    return item == nullptr ? fmt::format("{} of {}", quantity, code.text)
                           : fmt::format("{} of {}, {}", quantity, code.text, item_words(*item));
  }

  const Day& day_;
  Date on_;
  std::vector<StockLevel> shelf_;  ///< what is left of it
  std::vector<supply::Serving> servings_;
  std::map<std::size_t, ItemCode> next_items_;
};

}  // namespace

int BenchPieces::missing() const {
  int found = 0;
  for (const auto& level : take) found += level.quantity;
  return stopped.empty() ? quantity - found : 0;
}

int VisitSheet::count(care::Gravity gravity) const {
  return static_cast<int>(std::ranges::count(findings, gravity, &VisitFinding::gravity));
}

int VisitSheet::missing() const {
  int all = 0;
  for (const auto& pieces : bench) all += pieces.missing();
  return all;
}

std::map<PatientRef, std::string> patients_expected(const Day& day, Date on) {
  std::map<PatientRef, std::string> made;
  for (const auto& booking : day.clinic().reservations) {
    if (booking.needed_on == on && booking.quantity > 0) {
      made[booking.patient] = "parts are booked for this day";
    }
  }
  for (const auto& patient : day.clinic().patients) {
    if (patient.next_visit == on) made[patient.ref] = "next visit";
  }
  return made;
}

std::optional<Date> next_visits(const Day& day, Date after) {
  std::optional<Date> next;
  const auto look_at = [&](const std::optional<Date> on) {
    if (on && *on > after && (!next || *on < *next)) next = on;
  };
  for (const auto& booking : day.clinic().reservations) {
    if (booking.quantity > 0) look_at(booking.needed_on);
  }
  for (const auto& patient : day.clinic().patients) look_at(patient.next_visit);
  return next;
}

VisitDay visit_day(const Day& day, Date on) {
  Preparation preparation{day, on};
  VisitDay made{on, {}};
  for (const auto& [patient, reason] : patients_expected(day, on)) {
    made.sheets.push_back(preparation.sheet_of(patient, reason));
  }
  return made;
}

}  // namespace sparewell::desk
