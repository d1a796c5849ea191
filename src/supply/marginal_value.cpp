#include "supply/marginal_value.hpp"

#include <queue>

#include "supply/order_cost.hpp"

namespace sparewell::supply {
namespace {

struct Choice {
  double value = 0;  ///< missing pieces less, for its money
  std::size_t purchase = 0;
  int pieces = 0;

  /// The better one is greater; of equal ones the earlier in the list.
  bool operator<(const Choice& other) const {
    return value != other.value ? value < other.value : purchase > other.purchase;
  }
};

Choice next_choice(const Purchase& of, std::size_t position, int bought) {
  const int pieces = bought == 0 ? of.first : of.step;
  const int there = of.position + bought;
  const double fewer =
      expected_short(*of.demand, there) - expected_short(*of.demand, there + pieces);
  return {fewer / (pieces * of.unit_cost), position, pieces};
}

}  // namespace

BoughtPieces spend(double budget, const std::vector<Purchase>& purchases) {
  constexpr double rounding = 1e-9;
  BoughtPieces bought{std::vector<int>(purchases.size(), 0), {}, 0};
  std::priority_queue<Choice> choices;
  const auto offer = [&](std::size_t i) {
    const Purchase& of = purchases[i];
    const Choice next = next_choice(of, i, bought.pieces[i]);
    if (bought.pieces[i] + next.pieces <= of.most) choices.push(next);
  };
  for (std::size_t i = 0; i < purchases.size(); ++i) offer(i);
  while (!choices.empty()) {
    const Choice best = choices.top();
    choices.pop();
    const double cost = best.pieces * purchases[best.purchase].unit_cost;
    if (bought.spent + cost > budget * (1 + rounding)) continue;  // another may still fit
    bought.spent += cost;
    bought.pieces[best.purchase] += best.pieces;
    bought.order.push_back(best.purchase);
    offer(best.purchase);
  }
  return bought;
}

}  // namespace sparewell::supply
