/// The texts of papers for patients, in each language that resources/languages has a file for.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "clinic/date.hpp"

namespace sparewell::desk {

class PaperLanguage {
 public:
  PaperLanguage(std::string code, std::map<std::string, std::string, std::less<>> texts);

  /// "es": the name of its file.
  [[nodiscard]] const std::string& code() const { return code_; }
  /// "Español".
  [[nodiscard]] const std::string& name() const { return text("language.name"); }
  [[nodiscard]] const std::map<std::string, std::string, std::less<>>& texts() const {
    return texts_;
  }

  [[nodiscard]] bool has(std::string_view key) const { return texts_.contains(key); }
  /// Throws std::logic_error for a key that the language does not have.
  [[nodiscard]] const std::string& text(std::string_view key) const;
  /// The text with its placeholders filled in.
  template <class... Parts>
  [[nodiscard]] std::string filled(std::string_view key, const Parts&... parts) const {
    return fmt::vformat(text(key), fmt::make_format_args(parts...));
  }

  /// "24 Dec 2026", "24 dic 2026": the month in letters, so that no order of numbers is guessed.
  [[nodiscard]] std::string date(Date day) const;
  /// What the clinic recorded in its own words, such as a substance, with the word of this language
  /// behind it where there is one: "nickel (níquel)". `sort` is the beginning of the key.
  [[nodiscard]] std::string recorded(std::string_view sort, const std::string& words) const;

 private:
  std::string code_;
  std::map<std::string, std::string, std::less<>> texts_;
  std::vector<std::string> months_;
};

/// All languages, English first. Throws std::logic_error when a file of resources/languages cannot
/// be used.
[[nodiscard]] std::span<const PaperLanguage> paper_languages();
/// nullptr for a code without a file.
[[nodiscard]] const PaperLanguage* paper_language(std::string_view code);

}  // namespace sparewell::desk
