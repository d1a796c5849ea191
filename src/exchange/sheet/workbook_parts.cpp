#include "exchange/sheet/workbook_parts.hpp"

#include <charconv>
#include <map>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "clinic/words.hpp"

namespace sparewell::exchange {
namespace {

tl::unexpected<Refusal> damaged(const std::string& name) {
  return refuse(
      say("{} is damaged: a part of the workbook is missing or cannot be read; open it in "
          "a spreadsheet program and save it anew.",
          name));
}

/// An attribute by its local name, such as "id" for "r:id".
std::string attribute_of(const pugi::xml_node& node, std::string_view name) {
  for (const auto& attribute : node.attributes()) {
    const std::string_view full = attribute.name();
    const auto colon = full.find(':');
    if ((colon == std::string_view::npos ? full : full.substr(colon + 1)) == name) {
      return attribute.value();
    }
  }
  return {};
}

/// Where a relation leads, seen from `folder` ("xl/").
std::string target_of(const std::string& folder, const std::string& target) {
  if (target.starts_with('/')) return target.substr(1);
  std::string path = folder + target;
  for (std::size_t up = path.find("/../"); up != std::string::npos; up = path.find("/../")) {
    const auto start = path.rfind('/', up == 0 ? 0 : up - 1);
    const auto from = start == std::string::npos || start == up ? 0 : start + 1;
    path.erase(from, up + 4 - from);
  }
  return path;
}

struct Relations {
  std::map<std::string, std::string> by_id;
  std::map<std::string, std::string> by_type;  ///< the last word of the type; the first of each
};

Expected<Relations> read_relations(const ZipParts& parts, const std::string& name,
                                   const std::string& part, const std::string& folder) {
  Relations made;
  const auto text = parts.read(part);
  if (!text) return tl::unexpected(text.error());
  if (!*text) return made;
  const auto document = parse_part(name, **text);
  if (!document) return tl::unexpected(document.error());
  for (const auto& relation : document->document_element().children()) {
    const auto target = target_of(folder, attribute_of(relation, "Target"));
    const auto type = attribute_of(relation, "Type");
    made.by_id.emplace(attribute_of(relation, "Id"), target);
    made.by_type.emplace(type.substr(type.rfind('/') + 1), target);
  }
  return made;
}

std::string or_else(const Relations& relations, const std::string& type, std::string otherwise) {
  const auto found = relations.by_type.find(type);
  return found == relations.by_type.end() ? std::move(otherwise) : found->second;
}

Expected<std::string> find_sheet(const pugi::xml_document& workbook, const Relations& relations,
                                 const std::string& name, const std::string& wanted) {
  std::string names;
  for (const auto& sheet : child_of(workbook.document_element(), "sheets").children()) {
    const auto called = attribute_of(sheet, "name");
    names += fmt::format("{}'{}'", names.empty() ? "" : ", ", called);
    if (!wanted.empty() && !same_word(called, wanted)) continue;
    const auto found = relations.by_id.find(attribute_of(sheet, "id"));
    if (found == relations.by_id.end()) return damaged(name);
    // Sheets that are a chart only have no cells.
    if (wanted.empty() && found->second.find("worksheets/") == std::string::npos) continue;
    return found->second;
  }
  if (names.empty() || wanted.empty()) return damaged(name);
  return refuse(say("{} has no sheet '{}'; it has {}.", name, wanted, names));
}

Expected<std::vector<std::string>> read_texts(const ZipParts& parts, const std::string& name,
                                              const std::string& part) {
  std::vector<std::string> made;
  const auto text = parts.read(part);
  if (!text) return tl::unexpected(text.error());
  if (!*text) return made;
  const auto document = parse_part(name, **text);
  if (!document) return tl::unexpected(document.error());
  for (const auto& item : document->document_element().children()) {
    if (local_name(item) == "si") made.push_back(string_of(item));
  }
  return made;
}

/// The formats that every program knows by number (ECMA-376, part 1, 18.8.30), East Asian ones
/// included.
bool is_known_date_format(int id) {
  return (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) ||
         (id >= 50 && id <= 58);
}

Expected<std::vector<bool>> read_date_styles(const ZipParts& parts, const std::string& name,
                                             const std::string& part) {
  std::vector<bool> made;
  const auto text = parts.read(part);
  if (!text) return tl::unexpected(text.error());
  if (!*text) return made;
  const auto document = parse_part(name, **text);
  if (!document) return tl::unexpected(document.error());
  std::map<int, bool> own;
  const auto root = document->document_element();
  for (const auto& format : child_of(root, "numFmts").children()) {
    own[format.attribute("numFmtId").as_int()] =
        is_date_format(format.attribute("formatCode").as_string());
  }
  for (const auto& style : child_of(root, "cellXfs").children()) {
    const int id = style.attribute("numFmtId").as_int();
    const auto found = own.find(id);
    made.push_back(found == own.end() ? is_known_date_format(id) : found->second);
  }
  return made;
}

void append_utf8(std::string& into, unsigned code) {
  if (code < 0x80U) {
    into += static_cast<char>(code);
  } else if (code < 0x800U) {
    into += static_cast<char>(0xC0U | (code >> 6U));
    into += static_cast<char>(0x80U | (code & 0x3FU));
  } else {
    into += static_cast<char>(0xE0U | (code >> 12U));
    into += static_cast<char>(0x80U | ((code >> 6U) & 0x3FU));
    into += static_cast<char>(0x80U | (code & 0x3FU));
  }
}

/// "_x000D_" stands for the character with that number.
std::string without_escapes(std::string_view text) {
  std::string made;
  for (std::size_t at = 0; at < text.size(); ++at) {
    unsigned code = 0;
    const auto part = text.substr(at, 7);
    if (part.size() == 7 && part.starts_with("_x") && part[6] == '_') {
      const auto [end, error] = std::from_chars(part.data() + 2, part.data() + 6, code, 16);
      const bool half = code >= 0xD800U && code <= 0xDFFFU;
      if (error == std::errc{} && end == part.data() + 6 && code != 0 && !half) {
        append_utf8(made, code);
        at += 6;
        continue;
      }
    }
    made += text[at];
  }
  return made;
}

}  // namespace

std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  const auto colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

pugi::xml_node child_of(const pugi::xml_node& node, std::string_view name) {
  for (const auto& child : node.children()) {
    if (local_name(child) == name) return child;
  }
  return {};
}

Expected<pugi::xml_document> parse_part(const std::string& name, const std::string& text) {
  pugi::xml_document document;
  // No entities of the file's own are unfolded by this parser.
  const auto parsed = document.load_buffer(text.data(), text.size(),
                                           pugi::parse_default | pugi::parse_ws_pcdata_single);
  if (!parsed || !document.document_element()) return damaged(name);
  return document;
}

std::string string_of(const pugi::xml_node& item) {
  std::string text;
  for (const auto& child : item.children()) {
    if (local_name(child) == "t") text += child.text().get();
    if (local_name(child) == "r") text += child_of(child, "t").text().get();
  }
  return without_escapes(text);
}

bool is_date_format(std::string_view code) {
  bool quoted = false;
  bool bracketed = false;
  for (std::size_t at = 0; at < code.size(); ++at) {
    const char c = code[at];
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '\\' || c == '_' || c == '*') {
      ++at;
    } else if (c == '[') {
      bracketed = true;
    } else if (c == ']') {
      bracketed = false;
    } else if (!bracketed) {
      // What stands behind ";" is for numbers below zero and the like.
      if (c == ';') return false;
      if (std::string_view{"ymdhsYMDHS"}.find(c) != std::string_view::npos) return true;
    }
  }
  return false;
}

Expected<WorkbookParts> read_workbook_parts(const ZipParts& parts, const std::string& name,
                                            const std::string& sheet) {
  const auto top = read_relations(parts, name, "_rels/.rels", "");
  if (!top) return tl::unexpected(top.error());
  const std::string book = or_else(*top, "officeDocument", "xl/workbook.xml");
  const auto text = parts.read(book);
  if (!text) return tl::unexpected(text.error());
  if (!*text) {
    return refuse(
        say("{} is not an .xlsx workbook; open it in a spreadsheet program and save it as .xlsx.",
            name));
  }
  const auto document = parse_part(name, **text);
  if (!document) return tl::unexpected(document.error());
  const auto cut = book.rfind('/');
  const auto folder = cut == std::string::npos ? std::string{} : book.substr(0, cut + 1);
  const auto relations = read_relations(
      parts, name, fmt::format("{}_rels/{}.rels", folder, book.substr(folder.size())), folder);
  if (!relations) return tl::unexpected(relations.error());

  WorkbookParts made;
  auto found = find_sheet(*document, *relations, name, sheet);
  if (!found) return tl::unexpected(found.error());
  made.sheet_part = std::move(*found);
  auto texts =
      read_texts(parts, name, or_else(*relations, "sharedStrings", folder + "sharedStrings.xml"));
  if (!texts) return tl::unexpected(texts.error());
  made.texts = std::move(*texts);
  auto styles = read_date_styles(parts, name, or_else(*relations, "styles", folder + "styles.xml"));
  if (!styles) return tl::unexpected(styles.error());
  made.date_styles = std::move(*styles);
  made.from_1904 =
      child_of(document->document_element(), "workbookPr").attribute("date1904").as_bool();
  return made;
}

}  // namespace sparewell::exchange
