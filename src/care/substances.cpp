#include "care/substances.hpp"

#include <algorithm>
#include <deque>

namespace sparewell::care {
namespace {

/// The form in which names are compared.
std::string folded(std::string_view name) {
  std::string made;
  for (const char c : name) {
    const bool gap = c == ' ' || c == '-' || c == '_' || c == '\t';
    if (gap && (made.empty() || made.back() == ' ')) continue;
    made += gap ? ' ' : (c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c);
  }
  if (!made.empty() && made.back() == ' ') made.pop_back();
  return made;
}

struct Reached {
  std::string before;
  Relation relation = Relation::is_a;
};

SubstancePath way_back(const std::map<std::string, Reached>& reached, const std::string& from,
                       const std::string& to) {
  SubstancePath path;
  for (std::string at = to; at != from; at = reached.at(at).before) {
    path.names.push_back(at);
    path.relations.push_back(reached.at(at).relation);
  }
  path.names.push_back(from);
  std::ranges::reverse(path.names);
  std::ranges::reverse(path.relations);
  return path;
}

}  // namespace

bool SubstancePath::certain() const {
  return std::ranges::find(relations, Relation::may_contain) == relations.end();
}

Substances::Substances(std::span<const SubstanceRow> rows) {
  for (const auto& row : rows) {
    const auto from = folded(row.substance);
    const auto to = folded(row.other);
    steps_[from].push_back({to, row.relation});
    auto& back = steps_[to];
    if (row.relation != Relation::same_as) continue;
    back.push_back({from, row.relation});
    // A loop of names would have no last one.
    if (usual_name(to) != from) usual_.emplace(from, to);
  }
}

bool Substances::knows(std::string_view name) const {
  return steps_.contains(folded(name));
}

std::vector<SubstancePath> Substances::path(std::string_view from, std::string_view to) const {
  const auto first = folded(from);
  const auto last = folded(to);
  for (const bool with_residues : {false, true}) {
    std::map<std::string, Reached> reached{{first, {}}};
    std::deque<std::string> next{first};
    while (!next.empty() && !reached.contains(last)) {
      const auto at = std::move(next.front());
      next.pop_front();
      const auto steps = steps_.find(at);
      if (steps == steps_.end()) continue;
      for (const auto& step : steps->second) {
        if (step.relation == Relation::may_contain && !with_residues) continue;
        if (reached.try_emplace(step.to, at, step.relation).second) next.push_back(step.to);
      }
    }
    if (reached.contains(last)) return {way_back(reached, first, last)};
  }
  return {};
}

std::vector<std::string> Substances::reached(std::string from, bool with_residues) const {
  std::vector<std::string> found{std::move(from)};
  for (std::size_t at = 0; at < found.size(); ++at) {
    const auto steps = steps_.find(found[at]);
    if (steps == steps_.end()) continue;
    for (const auto& step : steps->second) {
      if (step.relation == Relation::may_contain && !with_residues) continue;
      if (std::ranges::find(found, step.to) == found.end()) found.push_back(step.to);
    }
  }
  return found;
}

std::vector<std::string> Substances::groups_of(std::string_view name) const {
  return reached(folded(name), false);
}

std::vector<std::string> Substances::may_be_in(std::string_view name) const {
  const auto sure = reached(folded(name), false);
  auto all = reached(folded(name), true);
  std::erase_if(
      all, [&](const std::string& each) { return std::ranges::find(sure, each) != sure.end(); });
  return all;
}

std::string Substances::usual_name(std::string_view name) const {
  auto usual = folded(name);
  for (auto next = usual_.find(usual); next != usual_.end(); next = usual_.find(usual)) {
    usual = next->second;
  }
  return usual;
}

}  // namespace sparewell::care
