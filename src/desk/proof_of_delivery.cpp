#include "desk/proof_of_delivery.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/day.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Use and care; common practice, no source.
std::vector<std::string> use_and_care() {
  return {
      said("The maker's instructions for use go first; they are handed over with each part."),
      said("Look at the skin of the residual limb every day, before and after wearing."),
      said("Stop wearing the part and call the clinic when there is redness that does not fade, "
           "blisters, an open sore, swelling, pain or a rash."),
      said("Wash what touches the skin as its maker says, rinse it well and let it dry before "
           "wearing."),
      said("Look at the parts for cracks, tears, worn threads and leaks; do not wear a damaged "
           "part."),
      said("Do not wear a part after its use-by date, and do not pass it on to another person.")};
}

bool same_line(const exchange::DeliveredLine& a, const exchange::DeliveredLine& b) {
  return a.description == b.description && a.side == b.side && a.lot == b.lot &&
         a.serial == b.serial && a.date == b.date;
}

exchange::DeliveredLine line_of(const ClinicIndex& index, const Unit& unit) {
  const auto* item = index.item(unit.item);
  exchange::DeliveredLine line;
  line.description = unit.item.text;
  if (item) line.description = fmt::format("{} ({})", item_words(*item), unit.item.text);
  line.side = shown_word(unit.side);
  line.size = item ? item->size_label : "";
  line.lot = unit.lot;
  line.serial = unit.serial;
  line.date = date_words(unit.issued_on);
  return line;
}

/// The handover of a unit: as recorded, or a new one.
void change_handover(store::UnitOfWork& work, const std::vector<store::Row<Handover>>& rows,
                     const Unit& unit, std::optional<Date> Handover::*field, Date day) {
  const auto found =
      std::ranges::find_if(rows, [&](const auto& row) { return row.record.is_of(unit); });
  auto handover = found == rows.end() ? handover_of(unit) : found->record;
  handover.*field = day;
  if (found == rows.end()) {
    work.put(handover);
  } else {
    work.put_instead(found->id, handover);
  }
}

/// "25 Nov 2026 and 20 Nov 2026": the days of the parts, the newest first; not all of many.
std::string days_words(const std::vector<IssuedParts>& parts) {
  constexpr std::size_t most = 3;
  std::vector<std::string> days;
  for (const auto& each : parts) {
    auto words = date_words(each.units.front().issued_on);
    if (days.empty() || days.back() != words) days.push_back(std::move(words));
  }
  if (days.size() <= most + 1) return list_words(days);
  const auto more = std::ssize(days) - static_cast<long long>(most);
  days.resize(most);
  days.push_back(count_words(more, "other day", "other days"));
  return list_words(days);
}

std::vector<Unit> units_in(const std::vector<IssuedParts>& parts) {
  std::vector<Unit> made;
  for (const auto& each : parts) made.insert(made.end(), each.units.begin(), each.units.end());
  return made;
}

/// That this is a copy, and of what; "" for parts that no sheet was written of.
std::string copy_words(const std::vector<IssuedParts>& parts) {
  std::optional<Date> printed;
  std::optional<Date> signature;
  for (const auto& each : parts) {
    printed = std::max(printed, each.printed_on);
    signature = std::max(signature, each.signed_on);
  }
  std::string words;
  if (printed || signature) words = said("Copy.");
  if (printed) {
    words += say(" A sheet of these parts was written before, last on {}.", date_words(*printed));
  }
  if (signature) {
    words += say(" A signed sheet is on record, signed on {}.", date_words(*signature));
  }
  return words;
}

}  // namespace

exchange::DeliverySheet delivery_sheet(const Clinic& clinic, const std::vector<Unit>& units,
                                       Date today, const SheetOptions& options,
                                       const std::string& remark) {
  const ClinicIndex index{clinic};
  exchange::DeliverySheet sheet;
  sheet.clinic_name =
      clinic.settings.name.empty() ? said("Clinic without a name") : clinic.settings.name;
  sheet.clinic_address = clinic.settings.ship_to;
  sheet.written_on = date_words(today);
  sheet.cautions = use_and_care();
  sheet.judgement = care_caution();
  sheet.paper = options.paper;
  sheet.remark = remark;
  for (const auto& unit : units) {
    sheet.patient_ref = unit.patient.text;
    auto line = line_of(index, unit);
    const auto same = std::ranges::find_if(
        sheet.lines, [&](const auto& other) { return same_line(line, other); });
    if (same != sheet.lines.end()) {
      ++same->quantity;
    } else {
      sheet.lines.push_back(std::move(line));
    }
  }
  const auto* patient = index.patient({sheet.patient_ref});
  if (patient && options.names) sheet.patient_name = full_name(*patient);
  return sheet;
}

Expected<int> print_delivery_sheet(store::Store& store, const std::vector<Unit>& units,
                                   const std::string& path, Date today, const SheetOptions& options,
                                   const std::string& who) {
  const auto snapshot = store.read();
  const auto clinic = store::load_clinic(*snapshot);
  const auto remark = copy_words(with_sheets(*snapshot, units));
  auto pages =
      exchange::write_delivery_sheet(delivery_sheet(clinic, units, today, options, remark), path);
  if (!pages) return pages;
  const auto work = store.begin_write({who, to_say("delivery sheet written")});
  const auto rows = work->all<Handover>();
  for (const auto& unit : units) change_handover(*work, rows, unit, &Handover::printed_on, today);
  work->commit();
  return pages;
}

Expected<int> print_sheet_again(store::Store& store, const UnitChoice& choice,
                                const std::vector<int>& numbers, const std::string& path,
                                Date today, const SheetOptions& options, const std::string& who) {
  const auto parts = chosen_parts(issued_parts(*store.read(), choice), numbers, choice.patient);
  if (!parts) return tl::unexpected(parts.error());
  if (numbers.empty() &&
      parts->back().units.front().issued_on != parts->front().units.front().issued_on) {
    return refuse(
        say("Parts of {} were handed over on several days: {}; name the day, or number the parts.",
            choice.patient, days_words(*parts)));
  }
  return print_delivery_sheet(store, units_in(*parts), path, today, options, who);
}

Expected<std::vector<Unit>> mark_delivered(store::Store& store, const UnitChoice& choice,
                                           const std::vector<int>& numbers, Date signed_on,
                                           Date today, const std::string& who) {
  if (signed_on > today)
    return refuse(say("The day of signing is still to come; give the day signed."));
  const auto work = store.begin_write({who, to_say("signed delivery sheet recorded")});
  const auto rows = work->all<Handover>();
  const auto parts = unsigned_parts(*work, choice);
  if (parts.empty()) {
    return refuse(
        say("{} has no part that answers to that and lacks a signed sheet.", choice.patient));
  }
  const auto chosen = chosen_parts(parts, numbers, choice.patient);
  if (!chosen) return tl::unexpected(chosen.error());
  auto units = units_in(*chosen);
  // Of parts alike, some may be signed for already.
  std::erase_if(units, [&](const Unit& unit) {
    return std::ranges::any_of(
        rows, [&](const auto& row) { return row.record.is_of(unit) && row.record.signed_on; });
  });
  for (const auto& unit : units) {
    if (signed_on < unit.issued_on) {
      return refuse(say("{} was issued on {}, after the day of signing.", unit.item.text,
                        iso_text(unit.issued_on)));
    }
    change_handover(*work, rows, unit, &Handover::signed_on, signed_on);
  }
  work->commit();
  return units;
}

}  // namespace sparewell::desk
