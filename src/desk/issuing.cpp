#include "desk/issuing.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_use.hpp"
#include "desk/label_item.hpp"
#include "desk/wording.hpp"
#include "exchange/barcode/read_label.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

template <class Record>
std::vector<Record> records(const store::Snapshot& snapshot) {
  std::vector<Record> made;
  for (auto& row : snapshot.all<Record>()) made.push_back(std::move(row.record));
  return made;
}

enum class Labelled { lot, serial };

/// The typed text, or the scanned one; refuses when they differ.
Expected<std::string> joined(Labelled what, const std::string& typed, const std::string& scanned) {
  if (typed.empty() || scanned.empty() || typed == scanned) return typed.empty() ? scanned : typed;
  return refuse(
      what == Labelled::lot
          ? say("The lot {} was typed, but the label says {}; look which one is right.", typed,
                scanned)
          : say("The serial number {} was typed, but the label says {}; look which one is right.",
                typed, scanned));
}

Expected<ItemCode> item_of(const std::vector<Item>& catalogue, const IssueRequest& request,
                           const exchange::Label& label) {
  if (!label.names_item()) {
    if (request.item.empty()) return refuse(say("Name the item, or scan its label."));
    return ItemCode{request.item};
  }
  const auto scanned = item_of_label(label, catalogue);
  if (!scanned) {
    if (request.item.empty()) return tl::unexpected(scanned.error());
    return ItemCode{request.item};
  }
  if (!request.item.empty() && scanned->code.text != request.item) {
    return refuse(say("The label is that of {}, not of {}; look which one is in your hand.",
                      scanned->code.text, request.item));
  }
  return scanned->code;
}

int next_copy(const std::vector<store::Row<Unit>>& rows, const Unit& unit) {
  int last = 0;
  auto handover = handover_of(unit);
  for (const auto& row : rows) {
    handover.copy = row.record.copy;
    if (handover.is_of(row.record)) last = std::max(last, row.record.copy);
  }
  return last + 1;
}

/// The units that the pieces become, in the order of the pieces.
std::vector<Unit> units_of(const IssueCheck& check, const std::vector<store::Row<Unit>>& rows) {
  std::vector<Unit> made;
  for (const auto& piece : check.taken) {
    Unit unit;
    unit.patient = check.question.patient;
    unit.side = check.question.side;
    unit.item = check.question.item;
    unit.lot = piece.lot.lot;
    unit.serial = check.question.serial;
    unit.issued_on = check.question.day;
    const int first = next_copy(rows, unit);
    const auto before = std::ranges::count(made, unit.lot, &Unit::lot);
    for (int i = 0; i < piece.quantity; ++i) {
      unit.copy = first + static_cast<int>(before) + i;
      made.push_back(unit);
    }
  }
  return made;
}

void book(store::UnitOfWork& work, IssueOutcome& outcome, const IssueRequest& request) {
  const auto& question = outcome.check.question;
  for (const auto& piece : outcome.check.taken) {
    work.record({piece.lot, piece.place, MovementKind::issue, -piece.quantity, question.day,
                 fmt::format("issued to {}, {}", question.patient.text, word(question.side))});
  }
  outcome.units = units_of(outcome.check, work.units_of(question.item));
  const auto booked = use_bookings(work, question.patient, question.item, question.quantity);
  for (std::size_t i = 0; i < outcome.units.size(); ++i) {
    work.put(outcome.units[i]);
    auto handover = handover_of(outcome.units[i]);
    if (i < booked.size()) {
      handover.booked_place = booked[i].place;
      handover.booked_on = booked[i].needed_on;
    }
    handover.overridden = words_of(outcome.check, Gravity::stops);
    if (!handover.overridden.empty()) {
      handover.override_by = request.override_by;
      handover.override_because = request.override_because;
    }
    work.put(handover);
  }
  work.commit();
  outcome.recorded = true;
}

std::string reason_of(const IssueRequest& request, const std::string& item) {
  auto text = fmt::format("issue of {} to {}", item, request.patient);
  if (!request.override_by.empty()) {
    text += fmt::format("; decided by {}: {}", request.override_by, request.override_because);
  }
  return text;
}

}  // namespace

Expected<IssueQuestion> question_of(const std::vector<Item>& catalogue, const IssueRequest& request,
                                    Date day) {
  exchange::Label label;
  if (!request.scans.empty()) {
    auto read = exchange::read_label(request.scans, day);
    if (!read) return tl::unexpected(read.error());
    if (!read->doubt.empty() && request.lot.empty()) return refuse(read->doubt);
    label = std::move(*read);
  }
  IssueQuestion made;
  made.patient = {request.patient};
  made.side = request.side;
  made.quantity = request.quantity;
  made.place = request.place;
  made.day = day;
  made.label_use_by = label.use_by;
  const auto item = item_of(catalogue, request, label);
  if (!item) return tl::unexpected(item.error());
  made.item = *item;
  const auto lot = joined(Labelled::lot, request.lot, label.doubt.empty() ? label.lot : "");
  if (!lot) return tl::unexpected(lot.error());
  made.lot = *lot;
  const auto serial = joined(Labelled::serial, request.serial, label.serial);
  if (!serial) return tl::unexpected(serial.error());
  made.serial = *serial;
  return made;
}

Clinic read_for_issue(const store::Snapshot& snapshot, const ItemCode& item) {
  Clinic clinic;
  clinic.settings = snapshot.settings();
  clinic.items = records<Item>(snapshot);
  clinic.patients = records<Patient>(snapshot);
  clinic.prostheses = records<Prosthesis>(snapshot);
  clinic.sensitivities = records<Sensitivity>(snapshot);
  clinic.decisions = records<SensitivityDecision>(snapshot);
  clinic.substances = records<SubstanceRow>(snapshot);
  clinic.measurements = records<Measurement>(snapshot);
  clinic.units = records<Unit>(snapshot);
  clinic.reservations = records<Reservation>(snapshot);
  clinic.places = records<Place>(snapshot);
  clinic.payer_rules = records<PayerRule>(snapshot);
  clinic.shelf = snapshot.shelf_of(item);
  return clinic;
}

Expected<IssueOutcome> issue_part(store::Store& store, const IssueRequest& request, Date day,
                                  Date today, const std::string& who,
                                  const ExpectedWear& expected) {
  if (day > today) {
    return refuse(
        say("{} is still to come; a part is handed over today or was before.", iso_text(day)));
  }
  if (request.override_by.empty() != request.override_because.empty()) {
    return refuse(say("Name both the clinician who decides and the reason."));
  }
  auto question = question_of(records<Item>(*store.read()), request, day);
  if (!question) return tl::unexpected(question.error());
  if (expected) question->expected_days = expected(*question);
  const auto work = store.begin_write({who, reason_of(request, question->item.text)});
  auto check = check_issue(read_for_issue(*work, question->item), *question);
  if (!check) return tl::unexpected(check.error());
  IssueOutcome outcome{std::move(*check), false, {}};
  const bool decided = !outcome.check.stops() || !request.override_by.empty();
  if (decided && !outcome.check.cannot_be_done()) book(*work, outcome, request);
  return outcome;
}

}  // namespace sparewell::desk
