#include "desk/find_words.hpp"

#include <algorithm>
#include <sstream>

namespace sparewell::desk {

std::string folded(std::string_view text) {
  std::string made{text};
  for (auto& c : made) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return made;
}

FindWords::FindWords(std::string_view typed) {
  std::istringstream stream{folded(typed)};
  for (std::string word; stream >> word;) words_.push_back(word);
}

bool FindWords::match(std::string_view text) const {
  return std::ranges::all_of(words_, [&](const std::string& word) {
    return text.find(word) != std::string_view::npos;
  });
}

}  // namespace sparewell::desk
