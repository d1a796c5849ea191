#include "desk/undo.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/booking_use.hpp"
#include "desk/visit_booking.hpp"
#include "desk/wording.hpp"
#include "supply/reversal.hpp"

namespace sparewell::desk {
namespace {

/// Kept as the reason.
constexpr const char* undone = to_say("undone");

using Sentence = Expected<std::string>;

std::string part_of(const Unit& unit) {
  return say("{} of {}", unit.item.text, unit.patient.text);
}

/// The part exactly as it was left, so that nothing that was recorded since is overwritten.
Expected<store::Row<Unit>> as_left(const store::Snapshot& snapshot, const Unit& unit) {
  for (auto& row : snapshot.units_of(unit.item)) {
    if (row.record == unit) return row;
  }
  return refuse(say("{} has been changed since; nothing was undone.", part_of(unit)));
}

Sentence end_again_as_mistake(store::Store& store, const std::vector<Unit>& units, Date today,
                              const std::string& who) {
  // Looked at first, because each part is a unit of work of its own.
  {
    const auto snapshot = store.read();
    for (const auto& unit : units) {
      if (const auto row = as_left(*snapshot, unit); !row) return tl::unexpected(row.error());
    }
  }
  for (const auto& unit : units) {
    UnitEnding ending;
    ending.unit = {unit.patient.text, unit.side,   unit.item.text,
                   unit.lot,          unit.serial, unit.issued_on};
    ending.mistake = true;
    if (const auto ended = end_unit(store, ending, today, who); !ended) {
      return tl::unexpected(ended.error());
    }
  }
  return say_n("Undone: the piece lies where it lay before, and does not count as issued.",
               "Undone: the {} pieces lie where they lay before, and do not count as issued.",
               units.size(), units.size());
}

Sentence use_again(store::Store& store, const EndedUnit& ended, Date today,
                   const std::string& who) {
  const auto work = store.begin_write({who, undone});
  const auto row = as_left(*work, ended.unit);
  if (!row) return tl::unexpected(row.error());
  if (ended.movement) {
    const auto back =
        supply::reverse({*ended.movement}, work->shelf_of(ended.unit.item), today, undone);
    if (!back) {
      return refuse(say("The piece is no longer at {}; nothing was undone.",
                        shown_place(back.error().place)));
    }
    for (const auto& movement : *back) work->record(movement);
  }
  auto unit = row->record;
  unit.ended_on.reset();
  unit.end_reason.reset();
  work->put_instead(row->id, unit);
  work->commit();
  return say("Undone: {} is in use again.", part_of(unit));
}

bool same_booking(const Reservation& one, const Reservation& other) {
  return one.patient == other.patient && one.item == other.item && one.place == other.place &&
         one.needed_on == other.needed_on;
}

/// The change, in pieces, of each booking that differs.
std::vector<Reservation> differences(const std::vector<Reservation>& before,
                                     const std::vector<Reservation>& after) {
  std::vector<Reservation> made;
  for (auto booking : after) {
    const auto was = std::ranges::find_if(
        before, [&](const Reservation& each) { return same_booking(each, booking); });
    if (was != before.end()) booking.quantity -= was->quantity;
    if (booking.quantity != 0) made.push_back(std::move(booking));
  }
  return made;
}

Sentence change_back(store::Store& store, const std::vector<Reservation>& changes,
                     const std::string& who) {
  const auto work = store.begin_write({who, undone});
  for (auto change : changes) {
    if (change.quantity < 0) {
      change.quantity = -change.quantity;
      add_to_booking(*work, change);
      continue;
    }
    const auto cancelled =
        cancel_booking(*work, {change.patient.text, change.item.text, change.needed_on,
                               !change.needed_on, change.place, change.quantity});
    if (!cancelled) return tl::unexpected(cancelled.error());
  }
  work->commit();
  return say("Undone: what is booked is as it was before.");
}

std::vector<BillingAnswer> answers_of(const store::Snapshot& snapshot, const std::string& finding) {
  std::vector<BillingAnswer> answers;
  for (auto& row : snapshot.all<BillingAnswer>()) {
    if (row.record.finding == finding) answers.push_back(std::move(row.record));
  }
  std::ranges::sort(answers, {}, &BillingAnswer::number);
  return answers;
}

Sentence answer_as_before(store::Store& store, const BillingAnswer& given, Date today,
                          const std::string& who) {
  const auto work = store.begin_write({who, undone});
  const auto answers = answers_of(*work, given.finding);
  if (answers.empty() || answers.back() != given) {
    return refuse(say("The finding has been answered again since; nothing was undone."));
  }
  auto next = answers.size() > 1 ? answers[answers.size() - 2] : given;
  if (answers.size() == 1) {
    next.answer = Answer::open_again;
    next.ask_again_on.reset();
  }
  next.number = given.number + 1;
  next.reason = undone;
  next.answered_by = who;
  next.answered_on = today;
  work->put(next);
  work->commit();
  return answers.size() == 1 ? say("Undone: the finding is open again.")
                             : say("Undone: the answer before it holds again.");
}

}  // namespace

void UndoList::did(UndoStep step) {
  lasting_.clear();
  steps_.push_back(std::move(step));
}

void UndoList::did_for_good(std::string what) {
  steps_.clear();
  lasting_ = std::move(what);
}

void UndoList::forget() {
  steps_.clear();
  lasting_.clear();
}

std::string UndoList::label() const {
  return steps_.empty() ? say("Undo") : say("Undo {}", steps_.back().what);
}

Sentence UndoList::undo(store::Store& store, Date today, const std::string& who) {
  if (!lasting_.empty()) {
    return refuse(say("This cannot be undone: {}. It stays on record.", lasting_));
  }
  if (steps_.empty()) return refuse(say("Nothing was done in this run that could be undone."));
  auto words = steps_.back().take_back(store, today, who);
  if (words) steps_.pop_back();
  return words;
}

UndoStep undo_issue(std::vector<Unit> units) {
  auto what = say("issue of {} to {}", units.front().item.text, units.front().patient.text);
  return {std::move(what),
          [units = std::move(units)](store::Store& store, Date today, const std::string& who) {
            return end_again_as_mistake(store, units, today, who);
          }};
}

std::optional<UndoStep> undo_ending(const UnitEnding& ending, const EndedUnit& ended) {
  if (ending.mistake) return std::nullopt;
  return UndoStep{say("end of {}", part_of(ended.unit)),
                  [ended](store::Store& store, Date today, const std::string& who) {
                    return use_again(store, ended, today, who);
                  }};
}

std::optional<UndoStep> undo_movements(const store::Snapshot& snapshot, const Booked& booked) {
  if (booked.movements.empty()) return std::nullopt;
  const auto& item = booked.movements.front().lot.item;
  const auto newest = snapshot.bookings_of(item, 1);
  if (newest.empty() || newest.front().wrote_more || newest.front().reversed_by ||
      newest.front().movements != booked.movements) {
    return std::nullopt;
  }
  return UndoStep{say("booking of {}", item.text),
                  [id = newest.front().id](store::Store& store, Date today,
                                           const std::string& who) -> Sentence {
                    const auto back =
                        in_one_work(store, {who, undone}, [&](store::UnitOfWork& work) {
                          return book_reversal(work, id, today, undone);
                        });
                    if (!back) return tl::unexpected(back.error());
                    return say("Undone: the stock lies as it lay before.");
                  }};
}

std::vector<Reservation> bookings_now(const store::Snapshot& snapshot) {
  std::vector<Reservation> made;
  for (auto& row : snapshot.all<Reservation>()) made.push_back(std::move(row.record));
  return made;
}

std::optional<UndoStep> undo_bookings(const std::vector<Reservation>& before,
                                      const std::vector<Reservation>& after) {
  const auto changes = differences(before, after);
  if (changes.empty()) return std::nullopt;
  const auto& first = changes.front();
  auto what = first.quantity > 0 ? say("booking for {}", first.patient.text)
                                 : say("cancelled booking of {}", first.patient.text);
  return UndoStep{std::move(what), [changes](store::Store& store, Date, const std::string& who) {
                    return change_back(store, changes, who);
                  }};
}

std::optional<UndoStep> undo_answer(const store::Snapshot& snapshot, const std::string& finding) {
  const auto answers = answers_of(snapshot, finding);
  if (answers.empty()) return std::nullopt;
  return UndoStep{
      say("answer to a finding"),
      [given = answers.back()](store::Store& store, Date today, const std::string& who) {
        return answer_as_before(store, given, today, who);
      }};
}

}  // namespace sparewell::desk
