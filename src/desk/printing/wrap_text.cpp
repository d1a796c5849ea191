#include "desk/printing/wrap_text.hpp"

#include <sstream>

#include "desk/printing/page_layout.hpp"

namespace sparewell::desk {
namespace {

bool continues_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

/// The most whole characters of `word` that fit, one at least.
std::size_t bytes_that_fit(const std::string& word, double width, const PaperSize& paper,
                           PrintFont font) {
  std::size_t fitting = 0;
  for (std::size_t end = 1; end <= word.size(); ++end) {
    if (end < word.size() && continues_character(word[end])) continue;
    if (fitting > 0 && paper.text_width(word.substr(0, end), font) > width) break;
    fitting = end;
  }
  return fitting;
}

}  // namespace

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  std::istringstream stream{text};
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

std::vector<std::string> wrapped(const std::string& text, double width, const PaperSize& paper,
                                 PrintFont font) {
  if (paper.text_width(text, font) <= width) return {text};
  std::vector<std::string> lines{""};
  for (auto word : words_of(text)) {
    const auto joined = lines.back().empty() ? word : lines.back() + " " + word;
    if (paper.text_width(joined, font) <= width) {
      lines.back() = joined;
      continue;
    }
    if (!lines.back().empty()) lines.emplace_back();
    while (paper.text_width(word, font) > width) {
      const auto bytes = bytes_that_fit(word, width, paper, font);
      if (bytes == word.size()) break;
      lines.back() = word.substr(0, bytes);
      word.erase(0, bytes);
      lines.emplace_back();
    }
    lines.back() = word;
  }
  return lines;
}

}  // namespace sparewell::desk
