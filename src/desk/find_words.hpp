/// What is typed into a find box, and whether a text answers to it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sparewell::desk {

/// Text in the form in which it is compared: ASCII letters in lower case, everything else as it is.
[[nodiscard]] std::string folded(std::string_view text);

/// The typed text as words. A text answers when it holds every word, in any order; nothing typed is
/// answered by every text.
class FindWords {
 public:
  FindWords() = default;
  explicit FindWords(std::string_view typed);

  [[nodiscard]] bool empty() const { return words_.empty(); }
  /// `text` has been folded.
  [[nodiscard]] bool match(std::string_view text) const;

 private:
  std::vector<std::string> words_;
};

}  // namespace sparewell::desk
