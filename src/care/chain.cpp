#include "care/chain.hpp"

#include <algorithm>

namespace sparewell::care {

std::vector<Function> functions_of(const ChainRules& rules, const Worn& worn) {
  std::vector<Function> made;
  for (const Item* item : worn.items) {
    for (const auto function : rules.functions_of(*item)) made.push_back(function);
  }
  return made;
}

std::vector<Function> needed_by(const ChainRules& rules, const Worn& worn) {
  if (worn.prosthesis == nullptr) return {};
  const auto* way = rules.way_of(worn.prosthesis->suspension, functions_of(rules, worn));
  return way == nullptr ? std::vector<Function>{} : way->needed;
}

std::vector<Function> missing_from(const ChainRules& rules, const Worn& worn) {
  const auto held = functions_of(rules, worn);
  auto missing = needed_by(rules, worn);
  std::erase_if(missing, [&](Function function) {
    return std::ranges::find(held, function) != held.end();
  });
  return missing;
}

std::vector<Function> missing_after(const ChainRules& rules, const Item& item, const Worn& worn) {
  Worn after = worn;
  after.items.push_back(&item);
  return missing_from(rules, after);
}

}  // namespace sparewell::care
