#include "billing/pairing.hpp"

#include <algorithm>
#include <numeric>

#include <lemon/network_simplex.h>
#include <lemon/smart_graph.h>

namespace sparewell::billing {
namespace {

/// Above the sum of all that only breaks ties.
constexpr std::int64_t scale = std::int64_t{1} << 32U;
constexpr std::int64_t split = 1000;  ///< a piece of a split line or issue

struct Arc {
  std::size_t issue;
  std::size_t billed;
  Likely likely;
};

/// Issues and lines that may belong together, directly or by way of others.
struct Group {
  std::vector<std::size_t> issues;
  std::vector<std::size_t> lines;
  std::vector<Arc> arcs;
};

int pieces_of(const Issue& issue) {
  return static_cast<int>(issue.units.size());
}

class UnionFind {
 public:
  explicit UnionFind(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t find(std::size_t one) {
    while (parent_[one] != one) one = parent_[one] = parent_[parent_[one]];
    return one;
  }
  void join(std::size_t a, std::size_t b) { parent_[find(b)] = find(a); }

 private:
  std::vector<std::size_t> parent_;
};

std::vector<Group> groups_of(std::span<const Issue> issues, std::span<const Billed> lines,
                             const CodeLikeness& likeness) {
  std::vector<Arc> arcs;
  UnionFind sets{issues.size() + lines.size()};
  for (std::size_t i = 0; i < issues.size(); ++i) {
    for (std::size_t j = 0; j < lines.size(); ++j) {
      if (lines[j].quantity == 0) continue;
      const auto found = likely(issues[i], lines[j], likeness);
      if (!found) continue;
      arcs.push_back({i, j, *found});
      sets.join(i, issues.size() + j);
    }
  }
  std::vector<Group> groups;
  constexpr auto none = static_cast<std::size_t>(-1);
  std::vector<std::size_t> group_of(issues.size() + lines.size(), none);
  const auto group = [&](std::size_t node) -> Group& {
    auto& place = group_of[sets.find(node)];
    if (place == none) {
      place = groups.size();
      groups.emplace_back();
    }
    return groups[place];
  };
  for (const Arc& arc : arcs) group(arc.issue).arcs.push_back(arc);
  for (std::size_t i = 0; i < issues.size(); ++i) {
    if (group_of[sets.find(i)] != none) group(i).issues.push_back(i);
  }
  for (std::size_t j = 0; j < lines.size(); ++j) {
    const std::size_t node = issues.size() + j;
    if (group_of[sets.find(node)] != none) group(node).lines.push_back(j);
  }
  return groups;
}

/// Tie-breaker: the first of a list costs most to leave alone.
std::int64_t precedence(std::size_t place) {
  return std::int64_t{500} - static_cast<std::int64_t>(std::min<std::size_t>(place, 500));
}

class Flow {
 public:
  Flow(std::span<const Issue> issues, std::span<const Billed> lines, const Group& group)
      : issues_{issues}, lines_{lines}, group_{group} {}

  std::vector<Pieces> solve() {
    add_nodes();
    add_arcs();
    lemon::NetworkSimplex<Graph, int, std::int64_t> simplex{graph_};
    simplex.supplyMap(supply_).costMap(cost_).run();
    std::vector<Pieces> found;
    for (std::size_t i = 0; i < group_.arcs.size(); ++i) {
      const int quantity = simplex.flow(pairs_[i]);
      const Arc& arc = group_.arcs[i];
      if (quantity > 0) found.push_back({arc.issue, arc.billed, quantity, arc.likely.agreement});
    }
    return found;
  }

 private:
  using Graph = lemon::SmartDigraph;

  void add_nodes() {
    graph_.reserveNode(static_cast<int>(group_.issues.size() + group_.lines.size() + 1));
    alone_ = graph_.addNode();
    int balance = 0;
    for (const std::size_t issue : group_.issues) {
      const auto node = graph_.addNode();
      supply_[node] = pieces_of(issues_[issue]);
      balance -= supply_[node];
      issue_nodes_.push_back(node);
    }
    for (const std::size_t line : group_.lines) {
      const auto node = graph_.addNode();
      supply_[node] = -lines_[line].quantity;
      balance -= supply_[node];
      line_nodes_.push_back(node);
    }
    supply_[alone_] = balance;
  }

  void add_arcs() {
    graph_.reserveArc(
        static_cast<int>(group_.arcs.size() + issue_nodes_.size() + line_nodes_.size()));
    const auto place = [](const std::vector<std::size_t>& list, std::size_t one) {
      return static_cast<std::size_t>(std::ranges::lower_bound(list, one) - list.begin());
    };
    for (const Arc& arc : group_.arcs) {
      const auto added = graph_.addArc(issue_nodes_[place(group_.issues, arc.issue)],
                                       line_nodes_[place(group_.lines, arc.billed)]);
      const bool whole = pieces_of(issues_[arc.issue]) == lines_[arc.billed].quantity;
      cost_[added] = arc.likely.cost * scale + (whole ? 0 : split);
      pairs_.push_back(added);
    }
    for (std::size_t i = 0; i < issue_nodes_.size(); ++i) {
      const auto added = graph_.addArc(issue_nodes_[i], alone_);
      cost_[added] = cost_alone_of(issues_[group_.issues[i]]) * scale + precedence(i);
    }
    for (std::size_t j = 0; j < line_nodes_.size(); ++j) {
      const auto added = graph_.addArc(alone_, line_nodes_[j]);
      cost_[added] = cost_alone_of(lines_[group_.lines[j]]) * scale + precedence(j);
    }
  }

  std::span<const Issue> issues_;
  std::span<const Billed> lines_;
  const Group& group_;
  Graph graph_;
  Graph::NodeMap<int> supply_{graph_};
  Graph::ArcMap<std::int64_t> cost_{graph_};
  Graph::Node alone_;
  std::vector<Graph::Node> issue_nodes_;
  std::vector<Graph::Node> line_nodes_;
  std::vector<Graph::Arc> pairs_;
};

}  // namespace

std::vector<Pieces> pair_pieces(std::span<const Issue> issues, std::span<const Billed> lines,
                                const CodeLikeness& likeness) {
  std::vector<Pieces> pieces;
  for (const Group& group : groups_of(issues, lines, likeness)) {
    if (group.arcs.size() == 1) {
      const auto& [issue, billed, likely] = group.arcs.front();
      if (likely.cost >= cost_alone_of(issues[issue]) + cost_alone_of(lines[billed])) continue;
      const int quantity = std::min(pieces_of(issues[issue]), lines[billed].quantity);
      pieces.push_back({issue, billed, quantity, likely.agreement});
    } else {
      std::ranges::copy(Flow{issues, lines, group}.solve(), std::back_inserter(pieces));
    }
  }
  std::ranges::sort(pieces, {}, [](const Pieces& each) {
    return std::pair{each.issue, each.billed};
  });
  return pieces;
}

}  // namespace sparewell::billing
