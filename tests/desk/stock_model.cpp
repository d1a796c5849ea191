#include "desk/stock_model.hpp"

#include <algorithm>
#include <array>

namespace sparewell::test {
namespace {

const std::array<std::string, 3> stores{"main store", "branch", "shelf 9"};
const std::array<std::string, 2> cages{"quarantine", "cage"};
/// Recorded by the clinic itself as "on loan"; nothing is known of who has it.
const std::string drawer = "given out long ago";

bool is_store(const std::string& place) {
  return std::ranges::find(stores, place) != stores.end();
}
bool is_cage(const std::string& place) {
  return std::ranges::find(cages, place) != cages.end();
}
/// A place that people may move stock to and from.
bool is_free(const std::string& place) {
  return is_store(place) || is_cage(place) || place == drawer;
}
bool is_expired(int lot) {
  return lot % lots_of_item == 1;
}
std::string way_to(const std::string& place) {
  return std::string{"in transit to "}.append(place);
}
std::string supplier_at(int supplier) {
  return std::string{"at supplier S"}.append(std::to_string(supplier));
}

}  // namespace

Lot model_lot(int lot) {
  const int item = lot / lots_of_item;
  Lot made{{std::string{"I"}.append(std::to_string(item))}, "A", model_day + days{400}};
  if (lot % lots_of_item == 1) made = {made.item, "B", model_day - days{1}};
  if (lot % lots_of_item == 2) made = {made.item, "B", model_day};
  if (lot % lots_of_item == 3) made = {made.item, "", std::nullopt};
  return made;
}

long model_cost(int item) {
  return 1000 + item;
}

int StockModel::at(int lot, const std::string& place) const {
  const auto level = shelf.find({lot, place});
  return level == shelf.end() ? 0 : level->second;
}

void StockModel::move(int lot, const std::string& place, int pieces) {
  auto& level = shelf[{lot, place}];
  level += pieces;
  if (level == 0) shelf.erase({lot, place});
  steps.push_back({lot, place, pieces});
}

int StockModel::found(const Operation& op, const std::string& place, int quantity) const {
  if (quantity < 1) return -1;
  const int first = op.lot / lots_of_item * lots_of_item;
  int one = -1;
  for (int lot = first; lot < first + lots_of_item; ++lot) {
    if (at(lot, place) == 0) continue;
    if (op.names_lot && model_lot(lot).lot != model_lot(op.lot).lot) continue;
    const auto use_by = model_lot(op.lot).use_by;
    if (op.names_use_by && use_by && model_lot(lot).use_by != use_by) continue;
    if (one >= 0) return -1;
    one = lot;
  }
  return one >= 0 && at(one, place) >= quantity ? one : -1;
}

bool StockModel::issue_first_expiring(const Operation& op) {
  const int first = op.lot / lots_of_item * lots_of_item;
  // B expires today, A later, and stock without a date is used last.
  const std::array<int, 3> order{first + 2, first, first + 3};
  int there = 0;
  for (const int lot : order) there += at(lot, op.from);
  if (!is_store(op.from) || op.quantity < 1 || there < op.quantity) return false;
  int left = op.quantity;
  for (const int lot : order) {
    const int taken = std::min(left, at(lot, op.from));
    if (taken > 0) move(lot, op.from, -taken);
    left -= taken;
  }
  return true;
}

bool StockModel::arrive(const Operation& op) {
  const auto way = way_to(op.to);
  const int lot = found(op, way, 1);
  if (lot < 0 || op.quantity < 0 || (op.quantity == 0 && !op.flag)) return false;
  const int sent = at(lot, way);
  const bool differs = op.quantity > sent || (op.flag && op.quantity < sent);
  if (differs && !op.flag2) return false;
  const int came = std::min(op.quantity, sent);
  if (came > 0) {
    move(lot, way, -came);
    move(lot, op.to, came);
  }
  if (op.flag && came < sent) move(lot, way, came - sent);
  if (op.quantity > sent) move(lot, op.to, op.quantity - sent);
  return true;
}

bool StockModel::give_back(const Operation& op) {
  const int lot = found(op, op.from, op.quantity);
  if (lot < 0 || !is_free(op.from) || op.number > 1 || !op.flag2) return false;
  move(lot, op.from, -op.quantity);
  move(lot, supplier_at(op.number), op.quantity);
  const long due = op.flag ? 500 : model_cost(lot / lots_of_item) * op.quantity;
  returns.push_back({lot, op.quantity, op.number, due, true});
  wrote_more = true;
  return true;
}

bool StockModel::credit(const Operation& op) {
  if (op.number < 1 || op.number > static_cast<int>(returns.size())) return false;
  auto& sent = returns[static_cast<std::size_t>(op.number - 1)];
  const bool back = !op.to.empty();
  const long amount = op.quantity;  // cents; 0 for none
  if (!sent.open || amount > sent.due) return false;
  if (amount == 0 && !op.flag && !back) return false;
  if (back && !is_store(op.to) && !is_cage(op.to)) return false;
  sent.due -= amount;
  wrote_more = true;
  if (op.flag || back || (amount > 0 && sent.due == 0)) {
    sent.open = false;
    move(sent.lot, supplier_at(sent.supplier), -sent.quantity);
    if (back) move(sent.lot, op.to, sent.quantity);
  }
  return true;
}

bool StockModel::end_loan(const Operation& op) {
  if (op.number < 1 || op.number > static_cast<int>(loans.size())) return false;
  auto& loan = loans[static_cast<std::size_t>(op.number - 1)];
  const int back = op.quantity;
  const int kept = op.more[0];
  const int lost = op.more[1];
  if (back + kept + lost == 0 || back + kept + lost > loan.out) return false;
  if (back > 0 && !is_store(op.to) && !is_cage(op.to)) return false;
  if (!op.flag2 && (lost > 0 || (back > 0 && is_cage(op.to)))) return false;
  loan.out -= back + kept + lost;
  if (back > 0) {
    move(loan.lot, "on loan", -back);
    move(loan.lot, op.to, back);
  }
  if (kept > 0) move(loan.lot, "on loan", -kept);
  if (lost > 0) move(loan.lot, "on loan", -lost);
  wrote_more = true;
  return true;
}

bool StockModel::apply(const Operation& op) {
  const auto carry = [&](const std::string& to) {
    const int lot = found(op, op.from, op.quantity);
    if (lot < 0) return false;
    move(lot, op.from, -op.quantity);
    move(lot, to, op.quantity);
    return true;
  };
  switch (op.doing) {
    case Doing::receipt:
      move(op.lot, op.to, op.quantity);
      wrote_more = wrote_more || op.flag;
      return true;
    case Doing::issue_first_expiring:
      return issue_first_expiring(op);
    case Doing::issue_of_lot:
      if (op.quantity < 1 || at(op.lot, op.from) < op.quantity) return false;
      move(op.lot, op.from, -op.quantity);
      return true;
    case Doing::transfer:
      if (!is_free(op.from) || is_cage(op.from) || op.from == op.to) return false;
      if (!is_store(op.to) && !(op.to == drawer && op.flag)) return false;
      return carry(op.flag ? op.to : way_to(op.to));
    case Doing::arrive:
      return arrive(op);
    case Doing::count: {
      const int before = at(op.lot, op.from);
      if (before == op.quantity) return false;
      move(op.lot, op.from, op.quantity - before);
      return true;
    }
    case Doing::quarantine:
      return is_free(op.from) && is_cage(op.to) && op.from != op.to && op.flag2 && carry(op.to);
    case Doing::release:
      return is_cage(op.from) && is_store(op.to) && op.flag2 && carry(op.to);
    case Doing::write_off: {
      const int lot = found(op, op.from, op.quantity);
      if (lot < 0 || !is_free(op.from) || (op.number == 0 && !is_expired(lot))) return false;
      move(lot, op.from, -op.quantity);
      return true;
    }
    case Doing::give_back:
      return give_back(op);
    case Doing::credit:
      return credit(op);
    case Doing::lend: {
      const int lot = found(op, op.from, op.quantity);
      if (lot < 0 || !is_store(op.from) || is_expired(lot) || op.number > 1) return false;
      loans.push_back({lot, op.quantity});
      wrote_more = true;
      return carry("on loan");
    }
    case Doing::loan_end:
      return end_loan(op);
    default:
      return false;
  }
}

bool StockModel::take_back(const std::vector<Step>& taken) {
  auto after = shelf;
  for (const auto& step : taken) after[{step.lot, step.place}] -= step.pieces;
  if (std::ranges::any_of(after, [](const auto& level) { return level.second < 0; })) return false;
  std::erase_if(after, [](const auto& level) { return level.second == 0; });
  shelf = std::move(after);
  return true;
}

Operation random_operation(std::mt19937& random, const StockModel& model) {
  const auto up_to = [&](int most) { return std::uniform_int_distribution<int>{0, most}(random); };
  const auto any_place = [&]() -> std::string {
    const int chosen = up_to(11);
    if (chosen < 6) return stores[static_cast<std::size_t>(chosen % 3)];
    if (chosen < 8) return cages[static_cast<std::size_t>(chosen % 2)];
    if (chosen == 8) return drawer;
    if (chosen == 9) return "on loan";
    return chosen == 10 ? way_to("branch") : supplier_at(0);
  };
  Operation op;
  op.doing = static_cast<Doing>(up_to(static_cast<int>(Doing::count_) - 1));
  if (up_to(5) == 0) op.doing = Doing::receipt;
  op.lot = up_to(model_items * lots_of_item - 1);
  op.names_lot = up_to(4) > 0;
  op.names_use_by = op.names_lot && up_to(4) > 0;
  op.from = any_place();
  op.to = any_place();
  op.quantity = up_to(4);
  // Most operations should find something: start from a level that there is.
  if (!model.shelf.empty() && up_to(4) > 0 && op.doing != Doing::receipt) {
    auto level = model.shelf.lower_bound({op.lot, ""});
    if (level == model.shelf.end()) level = model.shelf.begin();
    op.lot = level->first.first;
    op.from = level->first.second;
    op.quantity = up_to(level->second + 1);
    if (op.doing == Doing::arrive && op.from.starts_with("in transit to ")) {
      op.to = op.from.substr(14);
    }
  }
  op.flag = up_to(1) == 0;
  op.flag2 = up_to(5) > 0;
  if (op.doing == Doing::receipt) {
    op.to = stores[static_cast<std::size_t>(up_to(2))];
    op.quantity = 1 + up_to(5);
    op.flag = false;
  }
  if (op.doing == Doing::count && !is_free(op.from)) op.from = stores[0];
  if (op.doing == Doing::arrive && !is_store(op.to))
    op.to = stores[static_cast<std::size_t>(up_to(2))];
  op.number = up_to(2);
  if (op.doing == Doing::credit) {
    const int returns = static_cast<int>(model.returns.size());
    op.number = std::max(0, returns + 1 - up_to(12));
    if (up_to(2) > 0) op.to.clear();
    const bool known = op.number >= 1 && op.number <= returns;
    const long due = known ? model.returns[static_cast<std::size_t>(op.number - 1)].due : 100;
    op.quantity = up_to(1) == 0 ? static_cast<int>(due) : up_to(static_cast<int>(due) + 100);
    op.flag = up_to(3) == 0;
  }
  if (op.doing == Doing::loan_end) {
    op.number = std::max(0, static_cast<int>(model.loans.size()) + 1 - up_to(12));
    op.quantity = up_to(2);
    op.more[0] = up_to(1);
    op.more[1] = up_to(1);
  }
  // Only people's own counting could make the places of loans and returns differ from their
  // records; the program then refuses and says so, which has tests of its own.
  if (op.doing == Doing::issue_of_lot && !is_free(op.from)) op.from = stores[1];
  return op;
}

}  // namespace sparewell::test
