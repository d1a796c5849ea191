/// Workbooks written part by part, as other programs write them or as no program should.
#pragma once

#include <map>
#include <stdexcept>
#include <string>

#include <zip.h>

namespace sparewell::exchange::testing {

/// A zip file of these parts.
inline std::string zipped(const std::map<std::string, std::string>& parts,
                          const std::string& password = {}) {
  zip_source_t* target = zip_source_buffer_create(nullptr, 0, 0, nullptr);
  zip_t* archive = zip_open_from_source(target, ZIP_CREATE | ZIP_TRUNCATE, nullptr);
  if (archive == nullptr) throw std::runtime_error{"no zip"};
  zip_source_keep(target);
  for (const auto& [name, text] : parts) {
    zip_source_t* source = zip_source_buffer(archive, text.data(), text.size(), 0);
    const auto index = zip_file_add(archive, name.c_str(), source, ZIP_FL_OVERWRITE);
    if (!password.empty()) {
      zip_file_set_encryption(archive, static_cast<zip_uint64_t>(index), ZIP_EM_AES_256,
                              password.c_str());
    }
  }
  if (zip_close(archive) != 0) throw std::runtime_error{"zip not closed"};
  zip_source_open(target);
  zip_source_seek(target, 0, SEEK_END);
  const auto size = static_cast<std::size_t>(zip_source_tell(target));
  zip_source_seek(target, 0, SEEK_SET);
  std::string bytes(size, '\0');
  zip_source_read(target, bytes.data(), size);
  zip_source_close(target);
  zip_source_free(target);
  return bytes;
}

/// The parts of a workbook with one sheet "Prices"; `sheet` is the content of its sheetData.
inline std::map<std::string, std::string> workbook_with(const std::string& sheet,
                                                        const std::string& book = {}) {
  return {
      {"_rels/.rels",
       R"(<Relationships xmlns="r"><Relationship Id="a" Type="x/officeDocument" Target="xl/workbook.xml"/></Relationships>)"},
      {"xl/workbook.xml",
       "<workbook>" + book +
           R"(<sheets><sheet name="Prices" sheetId="1" r:id="s1"/></sheets></workbook>)"},
      {"xl/_rels/workbook.xml.rels",
       R"(<Relationships><Relationship Id="s1" Type="x/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="t" Type="x/sharedStrings" Target="/xl/sharedStrings.xml"/><Relationship Id="u" Type="x/styles" Target="styles.xml"/></Relationships>)"},
      {"xl/sharedStrings.xml",
       R"(<sst><si><t>Item</t></si><si><r><t>Lo</t></r><r><t>t</t></r><rPh><t>no</t></rPh></si><si><t>a_x0041_b</t></si></sst>)"},
      {"xl/styles.xml",
       R"(<styleSheet><numFmts><numFmt numFmtId="170" formatCode="&quot;day &quot;dd/mm/yy"/><numFmt numFmtId="171" formatCode="&quot;dm&quot;0.00"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="171"/></cellXfs></styleSheet>)"},
      {"xl/worksheets/sheet1.xml", "<worksheet><sheetData>" + sheet + "</sheetData></worksheet>"}};
}

}  // namespace sparewell::exchange::testing
