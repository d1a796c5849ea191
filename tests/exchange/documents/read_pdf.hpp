/// What other programs read in a PDF file that was written.
#pragma once

#include <array>
#include <cstdio>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

inline std::string read_by(const std::string& command) {
  std::string text;
  std::array<char, 4096> part{};
  FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  while (const auto got = std::fread(part.data(), 1, part.size(), pipe)) {
    text.append(part.data(), got);
  }
  CHECK(pclose(pipe) == 0);
  return text;
}

/// The words in the order in which they are read; line breaks as spaces, so that wrapped sentences
/// are found.
inline std::string words_in(const std::string& path, int from = 1, int to = 1000) {
  const auto text = read_by(fmt::format("pdftotext -f {} -l {} '{}' -", from, to, path));
  std::string words;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n' || c == '\f';
    if (!space) words += c;
    if (space && !words.empty() && words.back() != ' ') words += ' ';
  }
  return words;
}

inline int pages_of(const std::string& path) {
  const auto facts = read_by(fmt::format("pdfinfo '{}'", path));
  return std::stoi(facts.substr(facts.find("Pages:") + 6));
}

inline bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}
