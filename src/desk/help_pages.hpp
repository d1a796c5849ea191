/// The help: questions of people at work and their answers, from resources/help.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "desk/table.hpp"

namespace sparewell::desk {

struct HelpEntry {
  std::string question;
  std::string answer;
};

struct HelpPage {
  std::string id;  ///< "ordering": the file's name without its ending
  std::string title;
  std::vector<HelpEntry> entries;
};

/// All pages in the language that the program speaks, in the order in which work goes through a
/// clinic.
[[nodiscard]] const std::vector<HelpPage>& help_pages();

/// Reads one: a line with the title, then lines with a question and its answer in turn. Throws
/// std::logic_error naming the page where an answer is missing.
[[nodiscard]] HelpPage read_help_page(std::string_view id, std::string_view text);

/// One row a question; its id is that of help_row_id. Searched by question, answer and title.
[[nodiscard]] Table help_table();
/// Id of the row of a page's question.
[[nodiscard]] std::string help_row_id(std::string_view page, std::size_t entry);
/// Page and question of a row; the first of all for an id that is not one.
struct HelpPlace {
  const HelpPage* page = nullptr;
  std::size_t entry = 0;
};
[[nodiscard]] HelpPlace help_place(std::string_view row_id);

}  // namespace sparewell::desk
