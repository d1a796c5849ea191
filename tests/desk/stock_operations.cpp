#include "desk/stock_operations.hpp"

#include <stdexcept>

#include <fmt/format.h>

#include "desk/receiving.hpp"
#include "desk/stock_owed.hpp"
#include "supply/picking.hpp"

namespace sparewell::test {
namespace {

supply::Pieces pieces_of(const Operation& op) {
  const Lot lot = model_lot(op.lot);
  supply::Pieces made{lot.item, {}, {}, op.from, op.quantity};
  if (op.names_lot) made.lot = lot.lot;
  if (op.names_use_by) made.use_by = lot.use_by;
  return made;
}

bool issue_first_expiring(store::UnitOfWork& work, const Operation& op) {
  const auto view = desk::view_stock(work, model_lot(op.lot).item);
  const auto picking =
      supply::first_expiry_first_out(view->levels, op.quantity, model_day, op.from, view->places);
  if (picking.missing > 0 || picking.lots.empty()) return false;
  for (const auto& level : picking.lots) {
    work.record({level.lot, level.place, MovementKind::issue, -level.quantity, model_day, "issue"});
  }
  return true;
}

bool record(store::UnitOfWork& work, const Operation& op, const std::string& place,
            MovementKind kind, int pieces) {
  try {
    work.record({model_lot(op.lot), place, kind, pieces, model_day, "by hand"});
    return true;
  } catch (const store::StoreFailure& failure) {
    if (failure.error() != store::StoreError::constraint) throw;
    return false;
  }
}

bool count(store::UnitOfWork& work, const Operation& op) {
  const Lot lot = model_lot(op.lot);
  int before = 0;
  for (const auto& level : work.shelf_of(lot.item)) {
    if (level.lot == lot && level.place == op.from) before = level.quantity;
  }
  return record(work, op, op.from, MovementKind::count_correction, op.quantity - before);
}

desk::ReturnRequest return_of(const Operation& op) {
  return {pieces_of(op), fmt::format("S{}", op.number), "R-1", op.flag ? "5" : "",
          op.flag2 ? "seam opens" : ""};
}

desk::CreditRequest credit_of(const Operation& op) {
  const auto cents = Money{op.quantity, {"EUR"}};
  return {op.number, op.quantity > 0 ? plain_text(cents) : "", op.flag, false, op.to, ""};
}

desk::LendRequest loan_of(const Operation& op) {
  // Somebody decides, so that the checks of a part stop no loan: the plain account knows no
  // patients.
  return {pieces_of(op), fmt::format("P{}", op.number), Side::left, model_day + days{14}, "",
          "a clinician", "decided for the test"};
}

desk::LoanEndRequest loan_end_of(const Operation& op) {
  return {op.number, {op.quantity, op.to, op.more[0], op.more[1], op.flag2 ? "as seen" : ""}, {}};
}

}  // namespace

void prepare_clinic(store::Store& store) {
  const auto work = store.begin_write(tester);
  for (const char* name : {"S0", "S1"}) work->put(Supplier{{name}, {}, {}, {}, {"EUR"}, {}, {}});
  for (const char* ref : {"P0", "P1"}) {
    Patient patient;
    patient.ref = {ref};
    work->put(patient);
  }
  work->put(Place{"cage", PlaceSort::quarantine, ""});
  work->put(Place{"given out long ago", PlaceSort::on_loan, ""});
  for (int i = 0; i < model_items; ++i) {
    Item item;
    item.code = model_lot(i * lots_of_item).item;
    item.supplier = {"S0"};
    item.currency = {"EUR"};
    item.unit_cost = Money{model_cost(i), item.currency};
    work->put(item);
    OrderLine line;
    line.supplier = {"S0"};
    line.order_ref = fmt::format("O{}", i);
    line.item = item.code;
    line.ordered_on = model_day;
    line.quantity = 1'000'000;
    work->put(line);
  }
  work->commit();
}

bool receive(store::Store& store, const Operation& op) {
  const Lot lot = model_lot(op.lot);
  desk::ReceivingRequest request;
  request.item = lot.item.text;
  request.quantity = op.quantity;
  request.lot = lot.lot;
  request.use_by = lot.use_by;
  request.place = op.to;
  const auto outcome = desk::receive_delivery(store, request, model_day, tester);
  return outcome && outcome->is_recorded();
}

bool carry_out(store::UnitOfWork& work, const Operation& op) {
  const std::string reason = op.flag2 ? "as seen" : "";
  const auto lot = pieces_of(op).lot;
  const auto use_by = pieces_of(op).use_by;
  switch (op.doing) {
    case Doing::receipt:
      return record(work, op, op.to, MovementKind::receipt, op.quantity);
    case Doing::issue_first_expiring:
      return issue_first_expiring(work, op);
    case Doing::issue_of_lot:
      return op.quantity > 0 && record(work, op, op.from, MovementKind::issue, -op.quantity);
    case Doing::transfer:
      return desk::book_transfer(work, pieces_of(op), op.to,
                                 op.flag ? supply::Travel::at_once : supply::Travel::sent,
                                 model_day, reason)
          .has_value();
    case Doing::arrive:
      return desk::book_arrival(
                 work, {model_lot(op.lot).item, lot, use_by, op.to, op.quantity, op.flag, reason},
                 model_day)
          .has_value();
    case Doing::count:
      return count(work, op);
    case Doing::quarantine:
      return desk::book_quarantine(work, pieces_of(op), op.to, model_day, reason).has_value();
    case Doing::release:
      return desk::book_release(work, pieces_of(op), op.to, model_day, reason).has_value();
    case Doing::write_off:
      return desk::book_write_off(work, pieces_of(op), static_cast<supply::WriteOff>(op.number),
                                  model_day, reason)
          .has_value();
    case Doing::give_back:
      return desk::book_return(work, return_of(op), model_day).has_value();
    case Doing::credit:
      return desk::book_credit(work, credit_of(op), model_day).has_value();
    case Doing::lend:
      return desk::book_loan(work, loan_of(op), model_day).has_value();
    case Doing::loan_end:
      return desk::book_loan_end(work, loan_end_of(op), model_day).has_value();
    default:
      throw std::logic_error{"no such operation"};
  }
}

std::map<std::pair<int, std::string>, int> shelf_of(const store::Snapshot& snapshot) {
  static const auto numbers = [] {
    std::map<Lot, int> made;
    for (int lot = 0; lot < model_items * lots_of_item; ++lot) made[model_lot(lot)] = lot;
    return made;
  }();
  std::map<std::pair<int, std::string>, int> made;
  for (const auto& level : snapshot.shelf()) {
    made[{numbers.at(level.lot), level.place}] = level.quantity;
  }
  return made;
}

bool has_same_records(const store::Snapshot& snapshot, const StockModel& model) {
  const auto loans = snapshot.all<Loan>();
  const auto returns = snapshot.all<SupplierReturn>();
  if (loans.size() != model.loans.size() || returns.size() != model.returns.size()) return false;
  int kept = 0;
  for (std::size_t i = 0; i < loans.size(); ++i) {
    const auto& loan = loans[i].record;
    kept += loan.kept;
    if (loan.outstanding() != model.loans[i].out || loan.lot != model_lot(model.loans[i].lot)) {
      return false;
    }
  }
  for (std::size_t i = 0; i < returns.size(); ++i) {
    const auto& sent = returns[i].record;
    if (sent.is_open() != model.returns[i].open ||
        sent.outstanding()->minor != model.returns[i].due) {
      return false;
    }
  }
  return snapshot.all<Unit>().size() == static_cast<std::size_t>(kept);
}

}  // namespace sparewell::test
