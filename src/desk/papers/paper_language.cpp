#include "desk/papers/paper_language.hpp"

#include <algorithm>
#include <stdexcept>

#include "clinic/words.hpp"
#include "desk/embedded_table.hpp"
#include "language_texts.hpp"

namespace sparewell::desk {
namespace {

using Texts = std::map<std::string, std::string, std::less<>>;

constexpr std::size_t months_of_a_year = 12;

Texts read_texts(std::string_view file, std::string_view text) {
  Texts made;
  for_each_table_row(file, text, 2, [&](std::span<const std::string> cells) {
    return !cells[0].empty() && !cells[1].empty() && made.emplace(cells[0], cells[1]).second;
  });
  return made;
}

std::vector<PaperLanguage> read_languages() {
  std::vector<PaperLanguage> made;
  for (std::size_t i = 0; i < language_texts::embedded_text_count; ++i) {
    const auto& embedded = language_texts::embedded_texts[i];
    made.emplace_back(std::string{embedded.name.substr(0, embedded.name.find('.'))},
                      read_texts(embedded.name, embedded.text));
  }
  std::ranges::stable_partition(made, [](const auto& each) { return each.code() == "en"; });
  return made;
}

std::vector<std::string> parts_of(const std::string& text) {
  std::vector<std::string> parts{""};
  for (const char c : text) {
    if (c == ',') {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  return parts;
}

}  // namespace

PaperLanguage::PaperLanguage(std::string code, Texts texts)
    : code_{std::move(code)}, texts_{std::move(texts)}, months_{parts_of(text("months"))} {
  if (months_.size() != months_of_a_year) {
    throw std::logic_error{fmt::format("{}.csv: the text 'months' must name twelve", code_)};
  }
}

const std::string& PaperLanguage::text(std::string_view key) const {
  const auto found = texts_.find(key);
  if (found != texts_.end()) return found->second;
  throw std::logic_error{fmt::format("{}.csv has no text for '{}'", code_, key)};
}

std::string PaperLanguage::date(Date day) const {
  const std::chrono::year_month_day parts{day};
  return filled("date", static_cast<unsigned>(parts.day()),
                months_[static_cast<unsigned>(parts.month()) - 1], static_cast<int>(parts.year()));
}

std::string PaperLanguage::recorded(std::string_view sort, const std::string& words) const {
  for (const auto& [key, translated] : texts_) {
    if (!key.starts_with(sort) || !same_word(key.substr(sort.size()), words)) continue;
    return same_word(translated, words) ? words : fmt::format("{} ({})", words, translated);
  }
  return words;
}

std::span<const PaperLanguage> paper_languages() {
  static const std::vector<PaperLanguage> languages = read_languages();
  return languages;
}

const PaperLanguage* paper_language(std::string_view code) {
  const auto all = paper_languages();
  const auto found = std::ranges::find(all, code, &PaperLanguage::code);
  return found == all.end() ? nullptr : &*found;
}

}  // namespace sparewell::desk
