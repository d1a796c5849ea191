#include "billing/supplier_match_pairs.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>

#include <lemon/network_simplex.h>
#include <lemon/smart_graph.h>

namespace sparewell::billing {
namespace {

using Cost = std::int64_t;
using Graph = lemon::SmartDigraph;

// In days, before the places of the invoices break ties. Each is more than all below it together.
constexpr int most_days_apart = 500;
constexpr Cost other_quantity = 7;
constexpr Cost price_apart = 1'000;
constexpr Cost repeats_a_line = 3'000;
constexpr Cost named_received = 0;
constexpr Cost other_received = 10'000;
constexpr Cost named_on_order = 20'000;
constexpr Cost other_on_order = 30'000;
constexpr Cost left_over = 50'000;

/// Pieces of an order line that have come, or that are still to come.
struct Place {
  std::size_t order = 0;
  int quantity = 0;
  bool received = true;
};

std::vector<Place> places_of(const Clinic& clinic, const SupplierLines& lines) {
  std::vector<Place> places;
  for (const std::size_t at : lines.orders) {
    const OrderLine& order = clinic.order_lines[at];
    if (order.received_quantity > 0) places.push_back({at, order.received_quantity, true});
    if (order.outstanding() > 0) places.push_back({at, order.outstanding(), false});
  }
  return places;
}

Date came_on(const OrderLine& order, const Place& place) {
  return place.received && order.received_on ? *order.received_on : order.ordered_on;
}

class Costs {
 public:
  Costs(const Clinic& clinic, const SupplierLines& lines, const std::vector<Place>& places,
        const SupplierTerms& terms)
      : clinic_{clinic}, lines_{lines}, places_{places}, nearness_{terms.nearness_days} {
    std::set<std::string> orders;
    for (const std::size_t at : lines.orders) orders.insert(clinic.order_lines[at].order_ref);
    std::set<std::tuple<std::string, int, std::optional<Money>>> before;
    for (const std::size_t at : lines.invoices) {
      const InvoiceLine& line = clinic.invoice_lines[at];
      names_an_order_.push_back(orders.contains(line.order_ref));
      repeats_.push_back(!before.emplace(line.order_ref, line.quantity, line.unit_cost).second);
    }
  }

  /// nullopt: the pieces cannot be these. `rank` is the invoice's place among those of the item: of
  /// two the earlier one takes the better place.
  [[nodiscard]] std::optional<Cost> of(std::size_t rank, std::size_t at) const {
    if (ruled_out_.contains({rank, at})) return std::nullopt;
    const Place& place = places_[at];
    const InvoiceLine& invoice = clinic_.invoice_lines[lines_.invoices[rank]];
    const OrderLine& order = clinic_.order_lines[place.order];
    const bool apart =
        invoice.unit_cost && order.unit_cost && *invoice.unit_cost != *order.unit_cost;
    Cost cost = place.received ? named_received : named_on_order;
    if (invoice.order_ref != order.order_ref) {
      const bool fits = is_near(invoice, order, place) && !(apart && names_an_order_[rank]);
      if (!fits) return std::nullopt;
      cost = place.received ? other_received : other_on_order;
      cost += days_apart(invoice, order, place);
    }
    if (apart) cost += price_apart;
    if (repeats_[rank]) cost += repeats_a_line;
    if (invoice.quantity != place.quantity) cost += other_quantity;
    return scaled(cost) + static_cast<Cost>(place.received ? 2 * rank : rank);
  }

  [[nodiscard]] Cost of_left_over() const { return scaled(left_over); }

  /// The invoice names an order of this item, and the place is of another one.
  [[nodiscard]] bool names_another(std::size_t rank, const Place& place) const {
    const InvoiceLine& invoice = clinic_.invoice_lines[lines_.invoices[rank]];
    return names_an_order_[rank] && invoice.order_ref != clinic_.order_lines[place.order].order_ref;
  }
  void rule_out(std::size_t rank, std::size_t at) { ruled_out_.emplace(rank, at); }

 private:
  [[nodiscard]] Cost scaled(Cost cost) const {
    return cost * 2 * static_cast<Cost>(lines_.invoices.size() + 1);
  }
  [[nodiscard]] bool is_near(const InvoiceLine& invoice, const OrderLine& order,
                             const Place& place) const {
    if (!invoice.invoiced_on) return true;
    return order.ordered_on <= *invoice.invoiced_on &&
           *invoice.invoiced_on <= came_on(order, place) + days{nearness_};
  }
  [[nodiscard]] Cost days_apart(const InvoiceLine& invoice, const OrderLine& order,
                                const Place& place) const {
    if (!invoice.invoiced_on) return nearness_;
    const int apart = days_between(came_on(order, place), *invoice.invoiced_on);
    return std::min(std::abs(apart), most_days_apart);
  }

  const Clinic& clinic_;
  const SupplierLines& lines_;
  const std::vector<Place>& places_;
  int nearness_;
  std::set<std::pair<std::size_t, std::size_t>> ruled_out_;
  std::vector<bool> names_an_order_;  ///< by rank
  std::vector<bool> repeats_;         ///< likewise
};

/// Pieces that go from an invoice, by rank, to a place.
struct Flow {
  std::size_t rank = 0;
  std::size_t place = 0;
  int quantity = 0;
};

std::vector<Flow> least_cost(const Clinic& clinic, const SupplierLines& lines,
                             const std::vector<Place>& places, const Costs& costs) {
  Graph graph;
  Graph::ArcMap<int> room{graph};
  Graph::ArcMap<Cost> cost{graph};
  Graph::NodeMap<int> supply{graph};
  const auto connect = [&](Graph::Node from, Graph::Node to, int capacity, Cost each) {
    const auto arc = graph.addArc(from, to);
    room[arc] = capacity;
    cost[arc] = each;
    return arc;
  };
  const auto all = graph.addNode();
  std::vector<Graph::Node> place_nodes;
  for (const Place& place : places) {
    place_nodes.push_back(graph.addNode());
    connect(place_nodes.back(), all, place.quantity, 0);
  }
  std::vector<std::pair<Graph::Arc, Flow>> choices;
  for (std::size_t rank = 0; rank < lines.invoices.size(); ++rank) {
    const int quantity = clinic.invoice_lines[lines.invoices[rank]].quantity;
    const auto node = graph.addNode();
    supply[node] = quantity;
    supply[all] -= quantity;
    connect(node, all, quantity, costs.of_left_over());
    for (std::size_t at = 0; at < places.size(); ++at) {
      if (const auto each = costs.of(rank, at)) {
        choices.emplace_back(connect(node, place_nodes[at], quantity, *each), Flow{rank, at, 0});
      }
    }
  }
  lemon::NetworkSimplex<Graph, int, Cost> solver{graph};
  solver.upperMap(room).costMap(cost).supplyMap(supply).run();
  std::vector<Flow> flow;
  for (auto& [arc, pieces] : choices) {
    pieces.quantity = solver.flow(arc);
    if (pieces.quantity > 0) flow.push_back(pieces);
  }
  return flow;
}

/// Nothing of the invoice is left over, and nothing of the place is left open.
bool fits_whole(const Clinic& clinic, const SupplierLines& lines, const std::vector<Place>& places,
                const std::vector<Flow>& flow, const Flow& pieces) {
  int of_invoice = 0;
  int of_place = 0;
  for (const Flow& other : flow) {
    if (other.rank == pieces.rank) of_invoice += other.quantity;
    if (other.place == pieces.place) of_place += other.quantity;
  }
  return of_invoice == clinic.invoice_lines[lines.invoices[pieces.rank]].quantity &&
         of_place == places[pieces.place].quantity;
}

}  // namespace

bool are_alike(const InvoiceLine& a, const InvoiceLine& b) {
  return a.supplier == b.supplier && a.item == b.item && a.order_ref == b.order_ref &&
         a.quantity == b.quantity && a.unit_cost == b.unit_cost;
}

std::vector<SupplierLines> supplier_lines(const Clinic& clinic) {
  std::map<std::pair<SupplierName, ItemCode>, SupplierLines> groups;
  for (std::size_t at = 0; at < clinic.order_lines.size(); ++at) {
    const OrderLine& line = clinic.order_lines[at];
    groups[{line.supplier, line.item}].orders.push_back(at);
  }
  for (std::size_t at = 0; at < clinic.invoice_lines.size(); ++at) {
    const InvoiceLine& line = clinic.invoice_lines[at];
    if (line.quantity > 0) groups[{line.supplier, line.item}].invoices.push_back(at);
  }
  std::vector<SupplierLines> made;
  for (auto& [of, lines] : groups) {
    std::ranges::sort(lines.orders, {}, [&](std::size_t at) {
      const OrderLine& line = clinic.order_lines[at];
      return std::tie(line.ordered_on, line.order_ref, line.copy);
    });
    std::ranges::sort(lines.invoices, {}, [&](std::size_t at) {
      const InvoiceLine& line = clinic.invoice_lines[at];
      return std::tuple{line.invoiced_on.value_or(Date::max()), line.invoice_ref, line.order_ref,
                        line.copy};
    });
    made.push_back(std::move(lines));
  }
  return made;
}

std::vector<SupplierPair> match_pieces(const Clinic& clinic, const SupplierLines& lines,
                                       const SupplierTerms& terms) {
  const auto places = places_of(clinic, lines);
  if (lines.invoices.empty() || places.empty()) return {};
  Costs costs{clinic, lines, places, terms};
  for (;;) {
    auto flow = least_cost(clinic, lines, places, costs);
    bool all_fit = true;
    for (const Flow& pieces : flow) {
      if (costs.names_another(pieces.rank, places[pieces.place]) &&
          !fits_whole(clinic, lines, places, flow, pieces)) {
        costs.rule_out(pieces.rank, pieces.place);
        all_fit = false;
      }
    }
    if (!all_fit) continue;
    std::vector<SupplierPair> pairs;
    for (const Flow& pieces : flow) {
      const Place& place = places[pieces.place];
      pairs.push_back({lines.invoices[pieces.rank], place.order, pieces.quantity, place.received});
    }
    return pairs;
  }
}

}  // namespace sparewell::billing
