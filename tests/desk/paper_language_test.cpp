// The texts of resources/languages and the notes of resources/care-notes.
#include "desk/papers/paper_language.hpp"

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include <doctest/doctest.h>

#include "desk/papers/care_notes.hpp"

namespace paper_language_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

std::multiset<std::string> placeholders(const std::string& text) {
  static const std::regex pattern{R"(\{\d*\})"};
  return {std::sregex_token_iterator{text.begin(), text.end(), pattern},
          std::sregex_token_iterator{}};
}

}  // namespace

TEST_CASE("English and Spanish are there, English first") {
  REQUIRE(paper_languages().size() >= 2);
  CHECK(paper_languages().front().code() == "en");
  REQUIRE(paper_language("es") != nullptr);
  CHECK(paper_language("es")->name() == "Español");
  CHECK(paper_language("xx") == nullptr);
}

TEST_CASE("Every language has every text and no other, with the same placeholders") {
  const auto& english = *paper_language("en");
  for (const auto& language : paper_languages()) {
    CAPTURE(language.code());
    for (const auto& [key, text] : language.texts()) {
      CAPTURE(key);
      CHECK(english.has(key));
    }
    for (const auto& [key, text] : english.texts()) {
      CAPTURE(key);
      REQUIRE(language.has(key));
      CHECK(placeholders(language.text(key)) == placeholders(text));
    }
  }
}

TEST_CASE("Every text that the program asks for by name is there") {
  // Keys in the sources: in quotes behind text( or say(, whole.
  static const std::regex pattern{R"re((?:text|say)\(\s*"([a-z_.]+)"[,)])re"};
  std::size_t seen = 0;
  for (const auto& file : std::filesystem::directory_iterator{
           std::filesystem::path{SPAREWELL_SOURCE_DIR} / "src/desk/papers"}) {
    std::stringstream source;
    source << std::ifstream{file.path()}.rdbuf();
    const auto text = source.str();
    for (std::sregex_iterator i{text.begin(), text.end(), pattern}, end; i != end; ++i) {
      CAPTURE((*i)[1].str());
      CHECK(paper_language("en")->has((*i)[1].str()));
      ++seen;
    }
  }
  CHECK(seen > 40);
}

TEST_CASE("Days name the month in letters in each language") {
  const auto day = make_date(2026, 12, 24);
  CHECK(paper_language("en")->date(day) == "24 Dec 2026");
  CHECK(paper_language("es")->date(day) == "24 dic 2026");
}

TEST_CASE("What the clinic recorded stays as it is, with the word of the language behind it") {
  const auto& spanish = *paper_language("es");
  CHECK(spanish.recorded("substance.", "Mineral-Oil") == "Mineral-Oil (aceite mineral)");
  CHECK(spanish.recorded("substance.", "a salve of the household") == "a salve of the household");
  CHECK(paper_language("en")->recorded("substance.", "nickel") == "nickel");
}

TEST_CASE("A file that names another number of months cannot be used") {
  CHECK_THROWS_AS((PaperLanguage{"xx", {{"months", "a,b"}}}), std::logic_error);
  CHECK_THROWS_AS((PaperLanguage{"xx", {}}), std::logic_error);
}

TEST_CASE("Every kind of part has a care note in every language, with its source") {
  std::set<Kind> kinds;
  for (const auto& note : care_notes()) {
    kinds.insert(note.kind);
    CHECK(note.source == "common practice, no source");
    CHECK(note.picture != exchange::Pictogram::none);
    for (const auto& language : paper_languages()) CHECK(language.has(note.key));
  }
  CHECK(kinds.size() == words<Kind>().size());
  Item liner;
  liner.material = Material::urethane;
  const auto notes = care_notes_of(liner);
  REQUIRE(notes.size() == 5);  // those of all liners, and that of urethane
  CHECK(notes.back()->key == "note.urethane_rinse");
}

}  // namespace paper_language_test
