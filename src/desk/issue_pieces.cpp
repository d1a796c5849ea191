#include "desk/issue_pieces.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/wording.hpp"
#include "supply/lead_time.hpp"
#include "supply/patient_order.hpp"
#include "supply/picking.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

std::vector<StockLevel> levels_of(const Clinic& clinic, const IssueQuestion& question) {
  std::vector<StockLevel> made;
  for (const auto& level : clinic.shelf) {
    if (level.lot.item != question.item || level.quantity <= 0) continue;
    if (!question.lot.empty() && level.lot.lot != question.lot) continue;
    made.push_back(level);
  }
  return made;
}

/// Adds what may not be handed over of a lot that was named.
void take_held_back(IssuePieces& made, const std::vector<StockLevel>& levels, int missing,
                    const IssueQuestion& question, std::span<const Place> places) {
  for (auto level : levels) {
    const bool expired = level.lot.use_by && *level.lot.use_by < question.day;
    if (missing == 0) return;
    const PlaceSort sort = sort_of_place(places, level.place);
    // What is on loan, under way or with its supplier is not here to be handed over.
    if (sort != PlaceSort::quarantine && !(sort == PlaceSort::store && expired)) continue;
    if (!question.place.empty() && level.place != question.place) continue;
    level.quantity = std::min(level.quantity, missing);
    missing -= level.quantity;
    made.taken.push_back(std::move(level));
  }
}

std::string none_or_few_words(const IssueQuestion& question, int there) {
  const auto& item = question.item.text;
  if (question.lot.empty()) {
    return there == 0 ? say("No piece of {} is on the shelf", item)
                      : say("Only {} of {} can be handed over", there, item);
  }
  return there == 0 ? say("No piece of {}, lot {}, is on the shelf", item, question.lot)
                    : say("Only {} of {}, lot {}, can be handed over", there, item, question.lot);
}

std::string shortage_words(const IssueQuestion& question, int there,
                           const supply::Picking& picked) {
  auto text = none_or_few_words(question, there);
  if (question.lot.empty() && (picked.expired > 0 || picked.held_back > 0)) {
    text += say("; {} expired and {} in quarantine are not taken unless their lot is named",
                picked.expired, picked.held_back);
  }
  return text + ".";
}

/// The day by which pieces ordered on the next order day have come, nine times in ten.
Date replaced_by(const Clinic& clinic, const IssueQuestion& question) {
  const ClinicIndex index{clinic};
  const Item* item = index.item(question.item);
  if (item == nullptr) return question.day;
  const Supplier* supplier = index.supplier(item->supplier);
  const OrderDays order_days = supplier == nullptr ? OrderDays{} : supplier->order_days;
  return next_order_day(order_days, question.day) +
         days{supply::LeadTimes{clinic}.of(*item).quantile(supply::late_arrival_quantile)};
}

}  // namespace

int promised_to_others(const Clinic& clinic, const ItemCode& item, const PatientRef& patient,
                       const std::string& place, std::optional<Date> until) {
  int promised = 0;
  for (const auto& reservation : clinic.reservations) {
    if (reservation.item != item || reservation.patient == patient) continue;
    if (!place.empty() && reservation.place != place) continue;
    if (until && reservation.needed_on && *reservation.needed_on > *until) continue;
    promised += reservation.quantity;
  }
  return promised;
}

IssuePieces pieces_for(const Clinic& clinic, const IssueQuestion& question) {
  IssuePieces made;
  const auto levels = levels_of(clinic, question);
  const auto picked = supply::first_expiry_first_out(levels, question.quantity, question.day,
                                                     question.place, clinic.places);
  made.taken = picked.lots;
  if (!question.lot.empty()) take_held_back(made, levels, picked.missing, question, clinic.places);
  int there = 0;
  for (const auto& level : made.taken) there += level.quantity;
  if (there < question.quantity) {
    made.findings.push_back(
        {"not_on_shelf", Gravity::stops, false, shortage_words(question, there, picked)});
  }
  auto all = question;
  all.lot.clear();
  int usable = 0;
  for (const auto& level :
       supply::first_expiry_first_out(levels_of(clinic, all), 1'000'000'000, question.day,
                                      question.place, clinic.places)
           .lots) {
    usable += level.quantity;
  }
  // What is booked for a later day can still be ordered in time.
  const int promised = promised_to_others(clinic, question.item, question.patient, question.place,
                                          replaced_by(clinic, question));
  if (promised > 0 && usable - promised < question.quantity) {
    made.findings.push_back(
        {"promised", Gravity::ask, true,
         say_n("Of {} on the shelf, {} is promised to other patients.",
               "Of {} on the shelf, {} are promised to other patients.",
               static_cast<unsigned long>(promised), count_words(usable, "piece", "pieces"),
               number_words(promised))});
  }
  return made;
}

int free_pieces(const Clinic& clinic, const ItemCode& item, const PatientRef& patient, Date day) {
  std::vector<StockLevel> levels;
  int there = 0;
  for (const StockLevel& level : clinic.shelf) {
    if (level.lot.item != item || level.quantity <= 0) continue;
    levels.push_back(level);
    there += level.quantity;
  }
  if (there == 0) return 0;
  const int missing = supply::first_expiry_first_out(levels, there, day, "", clinic.places).missing;
  return std::max(0, there - missing - promised_to_others(clinic, item, patient, ""));
}

}  // namespace sparewell::desk
