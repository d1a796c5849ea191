#include "billing/margin.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "billing/money_shares.hpp"

namespace sparewell::billing {
namespace {

/// What pieces cost when they came.
class Costs {
 public:
  explicit Costs(const Clinic& clinic) : index_{clinic} {
    for (const OrderLine& line : clinic.order_lines) {
      if (!line.unit_cost || !line.received_on || line.received_quantity == 0) continue;
      received_[line.item].emplace_back(*line.received_on, *line.unit_cost);
    }
    for (auto& [item, list] : received_) std::ranges::sort(list);
  }

  [[nodiscard]] std::optional<Money> of(const Unit& unit) const {
    if (const auto found = received_.find(unit.item); found != received_.end()) {
      const auto after = std::ranges::upper_bound(found->second, unit.issued_on, {},
                                                  &std::pair<Date, Money>::first);
      if (after != found->second.begin()) return std::prev(after)->second;
    }
    const Item* item = index_.item(unit.item);
    return item == nullptr ? std::nullopt : item->unit_cost;
  }

 private:
  ClinicIndex index_;
  std::map<ItemCode, std::vector<std::pair<Date, Money>>> received_;  ///< by day
};

void add_to(std::optional<Money>& sum, const Money& more) {
  sum = sum ? *sum + more : more;
}

/// What was paid for a claim line; nullopt while nobody has answered.
std::optional<Money> paid_for(const Clinic& clinic, const PaymentAnswers& answers,
                              std::size_t claim_line) {
  std::optional<Money> paid;
  for (const std::size_t at : answers.standing.at(claim_line)) {
    const Money& more = clinic.remittance_lines[at].paid;
    if (paid && paid->currency != more.currency) return std::nullopt;
    add_to(paid, more);
  }
  return paid;
}

/// Shares of the payments of each claim line, for the pieces of `pairs`, in the order of the
/// pieces.
class PaidShares {
 public:
  PaidShares(const Clinic& clinic, std::span<const PairedPieces> pairs,
             const PaymentAnswers& answers) {
    std::map<std::size_t, int> pieces;
    for (const auto& pair : pairs) pieces[pair.claim_line] += static_cast<int>(pair.units.size());
    for (const auto& [claim_line, count] : pieces) {
      const auto paid = paid_for(clinic, answers, claim_line);
      if (!paid) continue;
      // Pieces of the line that were not handed out take their share as well.
      const int all = std::max(count, clinic.claim_lines[claim_line].quantity);
      const std::vector<int> alike(static_cast<std::size_t>(all), 1);
      shares_[claim_line] = {shares(paid->minor, alike), paid->currency, 0};
    }
  }

  /// The next piece's share; nullopt when the line was not answered.
  [[nodiscard]] std::optional<Money> take(std::size_t claim_line) {
    const auto found = shares_.find(claim_line);
    if (found == shares_.end()) return std::nullopt;
    auto& [minor, currency, next] = found->second;
    return Money{minor.at(next++), currency};
  }

 private:
  struct Shares {
    std::vector<std::int64_t> minor;
    Currency currency;
    std::size_t next = 0;
  };
  std::map<std::size_t, Shares> shares_;
};

MarginState state_of(const std::optional<Money>& charge, const std::optional<Money>& cost) {
  if (!charge) return MarginState::no_charge;
  if (!cost) return MarginState::no_cost;
  return charge->currency == cost->currency ? MarginState::known : MarginState::other_currency;
}

class Rows {
 public:
  void add(const ItemCode& item, const std::string& payer, const std::optional<Money>& charge,
           const std::optional<Money>& cost, const std::optional<Money>& paid) {
    const auto state = state_of(charge, cost);
    std::optional<Currency> currency;
    if (charge) currency = charge->currency;
    Currency cost_currency{""};
    if (cost) cost_currency = cost->currency;
    Margin& row = rows_[{item, payer, state, currency, cost_currency}];
    row.item = item;
    row.payer = payer;
    row.state = state;
    row.currency = currency;
    ++row.pieces;
    if (charge) add_to(row.charge, *charge);
    if (cost) add_to(row.cost, *cost);
    const bool is_comparable = paid && (!currency || paid->currency == *currency) &&
                               (!row.paid || row.paid->currency == paid->currency);
    if (!is_comparable) return;
    ++row.pieces_answered;
    add_to(row.paid, *paid);
    if (cost) add_to(row.cost_of_answered, *cost);
  }

  [[nodiscard]] std::vector<Margin> list() const {
    std::vector<Margin> made;
    for (const auto& [of, row] : rows_) made.push_back(row);
    return made;
  }

 private:
  using Place = std::tuple<ItemCode, std::string, MarginState, std::optional<Currency>, Currency>;
  std::map<Place, Margin> rows_;
};

std::optional<Money> less(const std::optional<Money>& income, const std::optional<Money>& cost) {
  if (!income || !cost || income->currency != cost->currency) return std::nullopt;
  return Money{income->minor - cost->minor, income->currency};
}

}  // namespace

std::optional<Money> Margin::of_charge() const {
  return less(charge, cost);
}

std::optional<Money> Margin::of_paid() const {
  return less(paid, cost_of_answered);
}

std::vector<Margin> margins(const Clinic& clinic, std::span<const PairedPieces> pairs,
                            const PaymentAnswers& answers) {
  const ClinicIndex index{clinic};
  const Costs costs{clinic};
  PaidShares paid{clinic, pairs, answers};
  Rows rows;
  for (const auto& pair : pairs) {
    if (pair.units.empty()) continue;
    const auto payer = payer_of(clinic.claim_lines[pair.claim_line], index);
    std::vector<std::int64_t> charges;
    if (pair.money) {
      charges = shares(pair.money->minor, std::vector<int>(pair.units.size(), 1));
    }
    for (std::size_t piece = 0; piece < pair.units.size(); ++piece) {
      const Unit& unit = clinic.units[pair.units[piece]];
      std::optional<Money> charge;
      if (pair.money) charge = Money{charges[piece], pair.money->currency};
      rows.add(unit.item, payer, charge, costs.of(unit), paid.take(pair.claim_line));
    }
  }
  return rows.list();
}

}  // namespace sparewell::billing
