#include "supply/what_if.hpp"

#include <algorithm>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
#include "supply/consideration.hpp"
#include "supply/order_cost.hpp"

namespace sparewell::supply {
namespace {

constexpr double noticeable = 0.1;
constexpr int farthest_days = 365;

struct Risk {
  double before = 0;
  double after = 0;
  double chance_short = 0;
  double wanted = 0;
};

/// Until this order arrives, and until the one after it does.
Risk risk_of(const StockedItem& of, int ordered) {
  const int position = of.given.position.total();
  const Pmf& after = of.demand.needed();
  return {expected_short(of.demand.before(), position), expected_short(after, position + ordered),
          after.more_than(position + ordered), of.given.wanted.chance};
}

/// The first day after today with a noticeable chance that more than `there` are needed by then.
std::optional<Date> runs_out(StockedItem& of, int there) {
  const Date today = of.given.today;
  const auto short_by = [&](int day) {
    return of.demand.until(today + days{day}).more_than(there) >= noticeable;
  };
  if (!short_by(farthest_days)) return std::nullopt;
  int low = 0;
  int high = farthest_days;
  while (high - low > 1) {
    const int middle = (low + high) / 2;
    (short_by(middle) ? high : low) = middle;
  }
  return today + days{high};
}

void add_line(Outcome& outcome, const ProposalLine& line) {
  ++outcome.lines;
  outcome.pieces += line.quantity;
  if (line.unit_cost) {
    outcome.goods[line.unit_cost->currency] += line.unit_cost->minor * line.quantity;
  } else {
    ++outcome.without_price;
  }
}

/// Parts that wear out before what is ordered for them on that day arrives.
double late_of(const ProposalLine& line) {
  double late = static_cast<double>(line.reason.reserved_for.size());
  for (const ExpectedNeed& need : line.reason.needs) late += need.chance_before_this_order;
  return late;
}

void add_freight(Outcome& outcome, const Clinic& clinic, const Proposal& proposal) {
  for (const Supplier& supplier : clinic.suppliers) {
    std::int64_t goods = 0;
    bool ordered = false;
    for (const ProposalLine& line : proposal.lines) {
      if (line.supplier != supplier.name) continue;
      ordered = true;
      if (line.unit_cost && line.unit_cost->currency == supplier.currency) {
        goods += line.unit_cost->minor * line.quantity;
      }
    }
    const auto& free_from = supplier.free_freight_from;
    const bool free =
        free_from && free_from->currency == supplier.currency && goods >= free_from->minor;
    if (ordered && supplier.freight && !free) {
      outcome.freight[supplier.freight->currency] += supplier.freight->minor;
    }
  }
}

bool overlaps(const Item& a, const Item& b) {
  if (a.size_min_cm && b.size_max_cm && *a.size_min_cm > *b.size_max_cm) return false;
  if (b.size_min_cm && a.size_max_cm && *b.size_min_cm > *a.size_max_cm) return false;
  return a.size_min_cm.has_value() == b.size_min_cm.has_value();
}

}  // namespace

std::vector<ItemCode> alternatives_to(const Item& item, const Clinic& clinic) {
  std::vector<ItemCode> made;
  for (const Item& other : clinic.items) {
    const bool serves = other.supplier != item.supplier && other.kind == item.kind &&
                        other.attachment == item.attachment && other.material == item.material &&
                        other.thread == item.thread && overlaps(item, other);
    if (serves) made.push_back(other.code);
  }
  std::ranges::sort(made);
  return made;
}

Outcome what_if(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                const OrderPolicy& policy) {
  OrderOutlook outlook{clinic, lives, today, policy.order_on};
  return decide(outlook, policy).outcome;
}

DecidedOrders decide(OrderOutlook& outlook, const OrderPolicy& policy) {
  const Clinic& clinic = outlook.clinic();
  Consideration considered{outlook, policy};
  auto& items = considered.items();
  DecidedOrders decided;
  decided.proposal = considered.proposal();
  std::unordered_map<ItemCode, int> ordered;  // with a budget less than was wanted
  for (const ProposalLine& line : decided.proposal.lines) ordered.emplace(line.item, line.quantity);
  std::vector<Risk> risks(items.size());
  in_parallel(items.size(), [&](std::size_t i) {
    if (!items[i].stocked) return;
    const auto line = ordered.find(items[i].stocked->given.item.code);
    risks[i] = risk_of(*items[i].stocked, line == ordered.end() ? 0 : line->second);
  });
  Outcome& outcome = decided.outcome;
  std::vector<std::size_t> risky;
  for (std::size_t i = 0; i < items.size(); ++i) {
    outcome.short_before += risks[i].before;
    outcome.short_after += risks[i].after;
    if (!items[i].stocked || risks[i].chance_short <= 1 - risks[i].wanted + 1e-9) continue;
    ++outcome.items_below_target;
    risky.push_back(i);
  }
  std::ranges::stable_sort(risky, std::ranges::greater{},
                           [&](std::size_t i) { return risks[i].chance_short; });
  risky.resize(std::min(risky.size(), most_items_at_risk));
  for (const std::size_t i : risky) {
    StockedItem& of = *items[i].stocked;
    outcome.at_risk.push_back({of.given.item.code, risks[i].chance_short,
                               runs_out(of, of.given.position.total()),
                               alternatives_to(of.given.item, clinic)});
  }
  for (const ProposalLine& line : decided.proposal.lines) {
    add_line(outcome, line);
    if (line.reason.patient_ordered) outcome.patients_late += late_of(line);
  }
  add_freight(outcome, clinic, decided.proposal);
  return decided;
}

}  // namespace sparewell::supply
