#include "desk/help_pages.hpp"

#include <algorithm>
#include <sstream>
#include <stdexcept>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/find_words.hpp"
#include "help_en.hpp"
#include "help_es.hpp"

namespace sparewell::desk {
namespace {

template <class EmbeddedText>
std::vector<HelpPage> pages_of(const EmbeddedText* texts, std::size_t count) {
  std::vector<HelpPage> made;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string_view name{texts[i].name};
    made.push_back(read_help_page(name.substr(0, name.rfind('.')), texts[i].text));
  }
  return made;
}

}  // namespace

HelpPage read_help_page(std::string_view id, std::string_view text) {
  HelpPage page{std::string{id}, "", {}};
  std::istringstream lines{std::string{text}};
  std::getline(lines, page.title);
  std::string question;
  std::string answer;
  while (std::getline(lines, question)) {
    if (!std::getline(lines, answer)) {
      throw std::logic_error{fmt::format("The help page {} has a question without answer.", id)};
    }
    page.entries.push_back({question, answer});
  }
  return page;
}

const std::vector<HelpPage>& help_pages() {
  static const auto english = pages_of(help_en::embedded_texts, help_en::embedded_text_count);
  static const auto spanish = pages_of(help_es::embedded_texts, help_es::embedded_text_count);
  return spoken_language() == "es" ? spanish : english;
}

std::string help_row_id(std::string_view page, std::size_t entry) {
  return fmt::format("{}/{}", page, entry);
}

Table help_table() {
  Table table{
      {{said("Question"), 40, Align::left, "", 2}, {said("About"), 16, Align::left, "", 1}}};
  std::vector<TableRow> rows;
  for (const auto& page : help_pages()) {
    for (std::size_t i = 0; i < page.entries.size(); ++i) {
      const auto& entry = page.entries[i];
      rows.push_back({help_row_id(page.id, i),
                      {{entry.question, std::nullopt}, {page.title, std::nullopt}},
                      folded(fmt::format("{} {} {}", page.title, entry.question, entry.answer))});
    }
  }
  table.fill(std::move(rows));
  return table;
}

HelpPlace help_place(std::string_view row_id) {
  for (const auto& page : help_pages()) {
    for (std::size_t i = 0; i < page.entries.size(); ++i) {
      if (help_row_id(page.id, i) == row_id) return {&page, i};
    }
  }
  return {&help_pages().front(), 0};
}

}  // namespace sparewell::desk
