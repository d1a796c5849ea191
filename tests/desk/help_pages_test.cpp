#include "desk/help_pages.hpp"

#include <algorithm>
#include <regex>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "desk/commands.hpp"
#include "desk/speaking.hpp"

namespace help_pages_test {

using namespace sparewell::desk;

TEST_CASE("Every page of the help has a title, questions and answers") {
  REQUIRE(help_pages().size() == 8);
  for (const auto& page : help_pages()) {
    CAPTURE(page.id);
    CHECK_FALSE(page.title.empty());
    CHECK(page.entries.size() >= 3);
    for (const auto& entry : page.entries) {
      CHECK(std::string{".?"}.find(entry.question.back()) != std::string::npos);
      CHECK(entry.answer.size() > entry.question.size() / 2);
    }
  }
  CHECK_THROWS_AS(read_help_page("x", "Title\nA question?\n"), std::logic_error);
}

TEST_CASE("Keys that the help names do what the table of commands says") {
  const auto key_of = [](Command command) { return std::string{command_spec(command).key}; };
  const auto names = [](const std::string& page, const std::string& key) {
    const auto& entries = std::ranges::find(help_pages(), page, &HelpPage::id)->entries;
    return std::ranges::any_of(entries, [&](const HelpEntry& entry) {
      return (entry.question + entry.answer).find(key) != std::string::npos;
    });
  };
  CHECK(names("ordering", key_of(Command::write_orders)));
  CHECK(names("receiving", key_of(Command::receive_delivery)));
  CHECK(names("patients", key_of(Command::issue_part)));
  CHECK(names("travel", key_of(Command::check_trip)));
  CHECK(names("sensitivities", key_of(Command::findings)));
  CHECK(names("billing", key_of(Command::answer_finding)));
  CHECK(names("import", key_of(Command::import_folder)));
  CHECK(names("window", key_of(Command::print_page)));
  CHECK(names("window", key_of(Command::keys)));
}

TEST_CASE("The help is found by any of its words, and a row leads to its question") {
  auto table = help_table();
  table.find("workbook supplier");
  REQUIRE(table.size() > 0);
  const auto place = help_place(table.at(0).id);
  CHECK(place.page->id == "ordering");
  CHECK(help_place("no such row").page == &help_pages().front());
}

namespace {

/// "Ctrl+Shift+I", "F8", in the order in which a text names them.
std::vector<std::string> keys_in(const std::string& text) {
  static const std::regex key{R"((Ctrl|Alt|Shift)(\+[A-Z][a-z]*|\+.)+|F[0-9]+)"};
  std::vector<std::string> made;
  for (std::sregex_iterator at{text.begin(), text.end(), key}, end; at != end; ++at) {
    made.push_back(at->str());
  }
  std::ranges::sort(made);
  return made;
}

}  // namespace

TEST_CASE("The help answers the same questions with the same keys in every language") {
  const auto english = help_pages();
  std::vector<HelpPage> spanish;
  {
    const sparewell::test::Speaking now{{"es", "", false}};
    spanish = help_pages();
  }
  REQUIRE(english.size() == spanish.size());
  for (std::size_t i = 0; i < english.size(); ++i) {
    CAPTURE(english[i].id);
    CHECK(spanish[i].id == english[i].id);
    CHECK(spanish[i].title != english[i].title);
    REQUIRE(spanish[i].entries.size() == english[i].entries.size());
    for (std::size_t j = 0; j < english[i].entries.size(); ++j) {
      CAPTURE(english[i].entries[j].question);
      CHECK(keys_in(spanish[i].entries[j].answer) == keys_in(english[i].entries[j].answer));
    }
  }
}

}  // namespace help_pages_test
