#include "care/attachment.hpp"

#include <algorithm>

namespace sparewell::care {
namespace {

/// "M10", "m 10" and "M-10" are one thread.
std::string plain_thread(const std::string& thread) {
  std::string made;
  for (const char c : thread) {
    if (c == ' ' || c == '-') continue;
    made += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  }
  return made;
}

/// What is worn, each item once. A part of the same kind is what it replaces or alternates with.
std::vector<const Item*> others_than(const Item& item, const Worn& worn) {
  std::vector<const Item*> made;
  for (const Item* other : worn.items) {
    if (other->kind == item.kind || std::ranges::find(made, other) != made.end()) continue;
    made.push_back(other);
  }
  return made;
}

void compare_threads(std::vector<AttachmentFinding>& found, const Item& item, const Item& other) {
  const auto ours = plain_thread(item.thread);
  const auto theirs = plain_thread(other.thread);
  if (ours.empty() || theirs.empty()) {
    found.push_back({Mismatch::thread_not_stated, &other, nullptr});
  } else if (ours != theirs) {
    found.push_back({Mismatch::thread_differs, &other, nullptr});
  }
}

bool is_one(const Item& item, Kind kind, Material material) {
  return item.kind == kind && item.material == material;
}

void compare_materials(std::vector<AttachmentFinding>& found, const ChainRules& rules,
                       const Item& item, const Item& other) {
  for (const MaterialPair& pair : rules.materials) {
    const bool meet = (is_one(item, pair.kind, pair.material) &&
                       is_one(other, pair.other_kind, pair.other_material)) ||
                      (is_one(other, pair.kind, pair.material) &&
                       is_one(item, pair.other_kind, pair.other_material));
    if (meet) found.push_back({Mismatch::materials_meet, &other, &pair});
  }
}

void check_work(std::vector<AttachmentFinding>& found, const ChainRules& rules, const Item& item,
                Suspension suspension) {
  const auto functions = rules.functions_of(item);
  const bool has_work =
      functions.empty() || std::ranges::any_of(functions, [&](Function function) {
        return rules.has_work(function, suspension);
      });
  if (has_work) return;
  found.push_back({item.kind == Kind::liner ? Mismatch::liner_not_for_this
                                            : Mismatch::not_in_suspension,
                   nullptr, nullptr});
}

}  // namespace

Gravity gravity(Mismatch mismatch) {
  return mismatch == Mismatch::materials_meet ? Gravity::note : Gravity::ask;
}

std::vector<AttachmentFinding> check_attachment(const ChainRules& rules, const Item& item,
                                                const Worn& worn) {
  std::vector<AttachmentFinding> found;
  if (worn.prosthesis != nullptr) check_work(found, rules, item, worn.prosthesis->suspension);
  const auto others = others_than(item, worn);
  for (const Item* other : others) {
    if (rules.is_threaded(item) && rules.is_threaded(*other)) {
      compare_threads(found, item, *other);
    }
  }
  for (const Item* other : others) compare_materials(found, rules, item, *other);
  return found;
}

}  // namespace sparewell::care
