#include "store/sqlite/references.hpp"

#include <SQLiteCpp/Column.h>

#include "clinic/say.hpp"
#include "store/port.hpp"

namespace sparewell::store::sqlite {
namespace {

struct Source {
  std::string word;
  std::string row_of_text;
  std::string text_of_row;
};

const Source& source(Named kind) {
  static const std::array<Source, 3> sources{
      Source{to_say("supplier"), "SELECT id FROM suppliers WHERE name = :text",
             "SELECT name FROM suppliers WHERE id = :id"},
      Source{to_say("item"), "SELECT id FROM items WHERE code = :text",
             "SELECT code FROM items WHERE id = :id"},
      Source{to_say("patient"), "SELECT id FROM patients WHERE ref = :text",
             "SELECT ref FROM patients WHERE id = :id"}};
  return sources[static_cast<std::size_t>(kind)];
}

}  // namespace

std::int64_t References::row(Named kind, const std::string& text) {
  auto& rows = known(kind).rows;
  if (const auto found = rows.find(text); found != rows.end()) return found->second;
  const auto query = connection_->query(source(kind).row_of_text);
  query->bind(":text", text);
  if (!query->executeStep()) {
    throw StoreFailure{StoreError::not_found,
                       say("There is no {} \"{}\" in the clinic file; add it first.",
                           said(source(kind).word.c_str()), text)};
  }
  return rows.emplace(text, query->getColumn(0).getInt64()).first->second;
}

const std::string& References::text(Named kind, std::int64_t row) {
  auto& texts = known(kind).texts;
  if (const auto found = texts.find(row); found != texts.end()) return found->second;
  const auto query = connection_->query(source(kind).text_of_row);
  query->bind(":id", row);
  if (!query->executeStep()) {
    throw StoreFailure{StoreError::corrupt,
                       say("The clinic file refers to a {} that is not in it; restore the "
                           "last backup.",
                           said(source(kind).word.c_str()))};
  }
  return texts.emplace(row, query->getColumn(0).getString()).first->second;
}

void References::forget() {
  known_ = {};
}

}  // namespace sparewell::store::sqlite
