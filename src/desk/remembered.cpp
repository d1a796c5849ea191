#include "desk/remembered.hpp"

#include <fstream>

#include <nlohmann/json.hpp>

namespace sparewell::desk {

using nlohmann::json;

Remembered recall(const std::filesystem::path& file) {
  Remembered found;
  std::ifstream stream{file};
  const auto values = json::parse(stream, nullptr, false);
  if (!values.is_object()) return found;
  try {
    found.clinic_file = values.value("clinic_file", found.clinic_file);
    found.orders_folder = values.value("orders_folder", found.orders_folder);
    found.import_folder = values.value("import_folder", found.import_folder);
    // Once it was a number, which says nothing since pages may move.
    if (const auto page = values.find("page"); page != values.end() && !page->is_number()) {
      found.page = page->get<std::string>();
    }
    found.width = values.value("width", found.width);
    found.height = values.value("height", found.height);
    found.maximised = values.value("maximised", found.maximised);
    found.ways.language = values.value("language", found.ways.language);
    found.ways.country = values.value("country", found.ways.country);
    found.ways.inches = values.value("inches", found.ways.inches);
    found.layout = layout_from(values.value("layout", json::object()));
  } catch (const json::exception&) {
    return {};
  }
  return found;
}

bool remember(const Remembered& remembered, const std::filesystem::path& file) {
  std::error_code failed;
  std::filesystem::create_directories(file.parent_path(), failed);
  std::ofstream stream{file, std::ios::trunc};
  stream << json{{"clinic_file", remembered.clinic_file},
                 {"orders_folder", remembered.orders_folder},
                 {"import_folder", remembered.import_folder},
                 {"page", remembered.page},
                 {"width", remembered.width},
                 {"height", remembered.height},
                 {"maximised", remembered.maximised},
                 {"language", remembered.ways.language},
                 {"country", remembered.ways.country},
                 {"inches", remembered.ways.inches},
                 {"layout", layout_json(remembered.layout)}}
                .dump(2)
         << '\n';
  return static_cast<bool>(stream.flush());
}

}  // namespace sparewell::desk
