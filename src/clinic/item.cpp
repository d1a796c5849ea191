#include "clinic/item.hpp"

namespace sparewell {

std::string description_without_size(const Item& item) {
  std::string words = item.description;
  const auto at = item.size_label.empty() ? std::string::npos : words.rfind(item.size_label);
  if (at != std::string::npos) words.erase(at, item.size_label.size());
  return words;
}

}  // namespace sparewell
