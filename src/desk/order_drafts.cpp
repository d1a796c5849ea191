#include "desk/order_drafts.hpp"

#include <algorithm>
#include <map>

namespace sparewell::desk {
namespace {

using store::Row;
using store::UnitOfWork;
using Drafts = std::map<std::string, std::vector<Row<OrderLine>>>;  // by number

std::map<SupplierName, Drafts> drafts_by_supplier(const UnitOfWork& work) {
  std::map<SupplierName, Drafts> made;
  for (auto& row : work.all<OrderLine>()) {
    if (row.record.state != OrderState::draft) continue;
    made[row.record.supplier][row.record.order_ref].push_back(std::move(row));
  }
  return made;
}

OrderLine draft_line(const supply::ProposalLine& line, const std::string& number, Date today) {
  OrderLine made;
  made.supplier = line.supplier;
  made.order_ref = number;
  made.item = line.item;
  made.ordered_on = today;
  made.quantity = line.quantity;
  made.unit_cost = line.unit_cost;
  made.state = OrderState::draft;
  return made;
}

std::optional<Date> promised_need(const std::vector<Row<Reservation>>& reservations,
                                  const PatientRef& patient, const ItemCode& item) {
  std::optional<Date> earliest;
  for (const auto& [id, reservation] : reservations) {
    const bool theirs = reservation.patient == patient && reservation.item == item;
    if (!theirs || reservation.quantity == 0 || !reservation.needed_on) continue;
    earliest = std::min(earliest.value_or(*reservation.needed_on), *reservation.needed_on);
  }
  return earliest;
}

/// The pieces of a line that are for named patients.
std::vector<OrderPiece> pieces_for_patients(const supply::ProposalLine& line,
                                            const std::string& number,
                                            const std::vector<Row<Reservation>>& reservations) {
  std::vector<OrderPiece> made;
  if (!line.reason.patient_ordered) return made;
  const auto add = [&](const PatientRef& patient) -> OrderPiece& {
    OrderPiece& piece = made.emplace_back();
    piece.supplier = line.supplier;
    piece.order_ref = number;
    piece.item = line.item;
    piece.position = static_cast<int>(made.size());
    piece.patient = patient;
    return piece;
  };
  for (const auto& need : line.reason.needs) {
    OrderPiece& piece = add(need.patient);
    piece.side = need.side;
    piece.needed_on = need.early;
  }
  for (const auto& patient : line.reason.reserved_for) {
    OrderPiece& piece = add(patient);
    piece.promised = true;
    piece.needed_on = promised_need(reservations, patient, line.item);
  }
  return made;
}

/// A header of today for a draft, or the one it has with its day of arrival moved on.
void put_header(UnitOfWork& work, const SupplierProposal& proposal, const std::string& number,
                Date today) {
  for (const auto& row : work.all<OrderHeader>()) {
    if (row.record.supplier != proposal.supplier || row.record.order_ref != number) continue;
    OrderHeader changed = row.record;
    changed.expected_by = expected_by(proposal, today);
    work.put_instead(row.id, changed);
    return;
  }
  OrderHeader made;
  made.supplier = proposal.supplier;
  made.order_ref = number;
  made.created_on = today;
  made.expected_by = expected_by(proposal, today);
  work.put(made);
}

bool says_the_same(const std::vector<Row<OrderLine>>& draft, const SupplierProposal& proposal) {
  if (draft.size() != proposal.lines.size()) return false;
  return std::ranges::all_of(proposal.lines, [&](const supply::ProposalLine* line) {
    return std::ranges::any_of(draft, [&](const Row<OrderLine>& row) {
      return row.record.item == line->item && row.record.quantity == line->quantity &&
             row.record.unit_cost == line->unit_cost;
    });
  });
}

void set_date(UnitOfWork& work, const std::vector<Row<OrderLine>>& draft, Date today) {
  for (const auto& row : draft) {
    if (row.record.ordered_on == today) continue;
    OrderLine changed = row.record;
    changed.ordered_on = today;
    work.put_instead(row.id, changed);
  }
}

void cancel(UnitOfWork& work, const std::vector<Row<OrderLine>>& draft) {
  for (const auto& row : draft) {
    OrderLine changed = row.record;
    changed.state = OrderState::cancelled;
    work.put_instead(row.id, changed);
  }
}

std::string keep_one(UnitOfWork& work, const Drafts& earlier, const SupplierProposal& proposal,
                     Date today) {
  std::string number;
  for (const auto& [earlier_number, draft] : earlier) {
    if (number.empty() && says_the_same(draft, proposal)) {
      number = earlier_number;
      set_date(work, draft, today);
    } else {
      cancel(work, draft);
    }
  }
  if (!number.empty()) {
    put_header(work, proposal, number, today);
    return number;
  }
  number = work.take_order_number(static_cast<int>(std::chrono::year_month_day{today}.year()));
  put_header(work, proposal, number, today);
  const auto reservations = work.all<Reservation>();
  for (const auto* line : proposal.lines) {
    work.put(draft_line(*line, number, today));
    for (const auto& piece : pieces_for_patients(*line, number, reservations)) work.put(piece);
  }
  return number;
}

}  // namespace

Date expected_by(const SupplierProposal& proposal, Date today) {
  int longest = 0;
  for (const auto* line : proposal.lines) longest = std::max(longest, line->reason.lead_days);
  return today + days{longest};
}

std::vector<std::string> keep_as_drafts(store::Store& store,
                                        const std::vector<SupplierProposal>& proposals, Date today,
                                        const store::Author& author) {
  std::vector<std::string> numbers;
  if (proposals.empty()) return numbers;
  const auto work = store.begin_write(author);
  auto earlier = drafts_by_supplier(*work);
  for (const auto& proposal : proposals) {
    numbers.push_back(keep_one(*work, earlier[proposal.supplier], proposal, today));
  }
  work->commit();
  return numbers;
}

}  // namespace sparewell::desk
