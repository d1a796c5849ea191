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
  if (!number.empty()) return number;
  number = work.take_order_number(static_cast<int>(std::chrono::year_month_day{today}.year()));
  for (const auto* line : proposal.lines) work.put(draft_line(*line, number, today));
  return number;
}

}  // namespace

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
