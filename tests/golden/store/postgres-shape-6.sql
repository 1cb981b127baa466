-- Shape 6 of the service's store, with the invented case of every kind and a fork. Written by scripts/store-shapes.ts.
CREATE SCHEMA skepsis_main;
CREATE TABLE skepsis_main.attached (
    entry text NOT NULL,
    root text NOT NULL,
    sha256 text NOT NULL,
    bytes bigint NOT NULL,
    media_type text NOT NULL,
    arrived integer NOT NULL
);
CREATE TABLE skepsis_main.challenges (
    hash text NOT NULL,
    purpose text NOT NULL,
    member text,
    ends_at text NOT NULL
);
CREATE TABLE skepsis_main.chunks (
    sha256 text NOT NULL,
    start bigint NOT NULL,
    data bytea NOT NULL
);
CREATE TABLE skepsis_main.counters (
    programme text NOT NULL,
    "position" bigint NOT NULL
);
CREATE TABLE skepsis_main.devices (
    device text NOT NULL,
    member text NOT NULL,
    name text NOT NULL,
    registered_at text NOT NULL,
    lost_at text
);
CREATE TABLE skepsis_main.entries (
    "position" bigint NOT NULL,
    id text NOT NULL,
    device text NOT NULL,
    seq bigint NOT NULL,
    root text NOT NULL,
    kind text NOT NULL,
    hash text NOT NULL,
    header text NOT NULL,
    body text
);
CREATE TABLE skepsis_main.erased (
    id text NOT NULL,
    root text NOT NULL
);
CREATE TABLE skepsis_main.files (
    sha256 text NOT NULL,
    bytes bigint NOT NULL
);
CREATE TABLE skepsis_main.forecasts (
    root text NOT NULL,
    colony text NOT NULL,
    night text NOT NULL,
    stood_at text NOT NULL,
    "position" bigint NOT NULL,
    text text NOT NULL
);
CREATE TABLE skepsis_main.heads (
    device text NOT NULL,
    seq bigint NOT NULL,
    hash text NOT NULL
);
CREATE TABLE skepsis_main.invitations (
    hash text NOT NULL,
    id text NOT NULL,
    role text NOT NULL,
    by text,
    made_at text NOT NULL,
    ends_at text NOT NULL,
    used_at text,
    member text
);
CREATE TABLE skepsis_main.members (
    id text NOT NULL,
    name text NOT NULL,
    sign_in text NOT NULL,
    role text NOT NULL,
    password text,
    places integer NOT NULL,
    failures integer NOT NULL,
    failed_at text,
    admitted_at text NOT NULL,
    ended_at text,
    password_ends_at text
);
CREATE TABLE skepsis_main.migrations (
    number integer NOT NULL,
    name text NOT NULL
);
CREATE TABLE skepsis_main.night_chunks (
    night text NOT NULL,
    number integer NOT NULL,
    text text NOT NULL
);
CREATE TABLE skepsis_main.nights (
    night text NOT NULL,
    stood_at text NOT NULL,
    "position" bigint NOT NULL
);
CREATE TABLE skepsis_main.parents (
    root text NOT NULL,
    parent text NOT NULL
);
CREATE TABLE skepsis_main.passkeys (
    id text NOT NULL,
    member text NOT NULL,
    public_key text NOT NULL,
    counter bigint NOT NULL,
    transports text NOT NULL,
    name text NOT NULL,
    made_at text NOT NULL,
    used_at text
);
CREATE TABLE skepsis_main.pieces (
    sha256 text NOT NULL,
    sender text NOT NULL,
    start bigint NOT NULL,
    data bytea NOT NULL
);
CREATE TABLE skepsis_main.quarantine (
    hash text NOT NULL,
    entry text NOT NULL
);
CREATE TABLE skepsis_main.scopes (
    member text NOT NULL,
    root text NOT NULL,
    since bigint NOT NULL
);
CREATE TABLE skepsis_main.sessions (
    hash text NOT NULL,
    id text NOT NULL,
    member text NOT NULL,
    device text,
    client text NOT NULL,
    began_at text NOT NULL,
    seen_at text NOT NULL,
    ends_at text NOT NULL,
    ended_at text,
    why text
);
CREATE TABLE skepsis_main.states (
    root text NOT NULL,
    fold_version integer NOT NULL,
    "position" bigint NOT NULL,
    part text NOT NULL
);
CREATE TABLE skepsis_main.uploads (
    sha256 text NOT NULL,
    sender text NOT NULL,
    bytes bigint NOT NULL,
    held bigint NOT NULL
);
INSERT INTO skepsis_main.counters VALUES ('main', 40);
INSERT INTO skepsis_main.entries VALUES (1, '019cd19c-3000-7df7-b68a-a3492b2b7ee0', 'copied-phone', 1, 'specimen-1', 'bee-read', '96439e20f9a63f52c4d16a513a1e7d2dcd27d1ba229a8112811b585b26ea87d3', '{"id":"019cd19c-3000-7df7-b68a-a3492b2b7ee0","kind":"bee-read","schema":1,"device":"copied-phone","seq":1,"prev":null,"at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:00:00.000Z","author":"R. Vale","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"bbb928b8f16e7c095277865ee5ad5038431605c9a02c6818de7a28c29f02ee9f"}', '{"salt":"3df275a497e1c83e8d2b847b2ba9074f","data":{"bee":1,"left":"clear","lost":false,"reading":"reading-1","right":"clear"}}');
INSERT INTO skepsis_main.entries VALUES (2, '019cd19c-3000-7af0-8425-49f75c4206c9', 'office-1', 1, 'apiary-hollow', 'apiary-registered', '9101281bb329bc1cbcd3fb8d5cd1e4252ab5d543089ad9b174fb7b97678c8dcb', '{"id":"019cd19c-3000-7af0-8425-49f75c4206c9","kind":"apiary-registered","schema":1,"device":"office-1","seq":1,"prev":null,"at":"2026-03-02","recordedAt":"2026-03-09T08:00:00.000Z","author":"Office","programme":"main","about":["apiary-hollow"],"replaces":[],"content":"09987e511f1a720a72554fa85274720273881a4b1f7bdd138d71b748ae057f72"}', '{"salt":"a2b0acbbcc23e25ad52dafe0c4e2e2b3","data":{"code":"HO","latitude":45.2,"longitude":-93.1,"name":"Hollow Meadow","place":"Invented County"}}');
INSERT INTO skepsis_main.entries VALUES (3, '019cd19d-1a60-7da2-8e44-3f297405d887', 'office-1', 2, 'apiary-hollow', 'colony-registered', '3d078f8bac4e12a7e92f18a64bfc89415deb439c5039b2d91245688bc76c5f36', '{"id":"019cd19d-1a60-7da2-8e44-3f297405d887","kind":"colony-registered","schema":1,"device":"office-1","seq":2,"prev":"9101281bb329bc1cbcd3fb8d5cd1e4252ab5d543089ad9b174fb7b97678c8dcb","at":"2026-03-02","recordedAt":"2026-03-09T08:01:00.000Z","author":"Office","programme":"main","about":["apiary-hollow","colony-1"],"replaces":[],"content":"f262551d849fa72d61145e2398b72390292681bc2ccb4ff3336357673680aa08"}', '{"salt":"42ce3fabe3b81fcba73d839ea5f8cb8a","data":{"code":"HO-1","hiveType":"ten-frame"}}');
INSERT INTO skepsis_main.entries VALUES (4, '019cd19e-04c0-7960-b11b-cef683209322', 'office-1', 3, 'apiary-hollow', 'colony-registered', '7697273ddff92ec20c57de5a8702109f5aabc79eff78db04df92486bf8e352a5', '{"id":"019cd19e-04c0-7960-b11b-cef683209322","kind":"colony-registered","schema":1,"device":"office-1","seq":3,"prev":"3d078f8bac4e12a7e92f18a64bfc89415deb439c5039b2d91245688bc76c5f36","at":"2026-03-02","recordedAt":"2026-03-09T08:02:00.000Z","author":"Office","programme":"main","about":["apiary-hollow","colony-2"],"replaces":[],"content":"18a1eef32ef8f70f8520ce7800b2d6fcc5b5509ed90f49b65f35e3c16578547a"}', '{"salt":"1d1dccf8aef29aeef1d142fdd6562377","data":{"code":"HO-2","hiveType":"ten-frame"}}');
INSERT INTO skepsis_main.entries VALUES (5, '019cd19e-ef20-757c-a5f6-227491845263', 'office-1', 4, 'apiary-hollow', 'weather-year-recorded', '820bbae45ae92d8ebc1b8461c4d110b1d06cfffc69c2a6329d5d6729361be3d0', '{"id":"019cd19e-ef20-757c-a5f6-227491845263","kind":"weather-year-recorded","schema":1,"device":"office-1","seq":4,"prev":"7697273ddff92ec20c57de5a8702109f5aabc79eff78db04df92486bf8e352a5","at":"2026-03-02","recordedAt":"2026-03-09T08:03:00.000Z","author":"Office","programme":"main","about":["apiary-hollow"],"replaces":[],"content":"e385b091e4e556340d45612c4614ff7246667b934d1fe1e4dd6ef2ac8bf7aa19"}', '{"salt":"83a3169d475a436f89c67828fd0ec3a8","data":{"kind":"monthly-means","monthlyMeanCelsius":[-9,-6,0,8,15,20,23,21,17,9,1,-6],"source":"invented"}}');
INSERT INTO skepsis_main.entries VALUES (6, '019cd19f-d980-7a80-9d05-c347956c0c05', 'office-1', 5, 'apiary-hollow', 'region-recorded', '08466feba3e19b3ee6ecb9c984da8c37f40f555f067892c98e6d19e99603c969', '{"id":"019cd19f-d980-7a80-9d05-c347956c0c05","kind":"region-recorded","schema":1,"device":"office-1","seq":5,"prev":"820bbae45ae92d8ebc1b8461c4d110b1d06cfffc69c2a6329d5d6729361be3d0","at":"2026-03-02","recordedAt":"2026-03-09T08:04:00.000Z","author":"Office","programme":"main","about":["apiary-hollow"],"replaces":[],"content":"a9d84056d3c29b8f05ff735390d2aac5d47545897085e8d5e1470c3365bffbfc"}', '{"salt":"c325775ab470f8d4d4f70304280b210d","data":{"acarapisWoodi":"unknown","smallHiveBeetle":"absent","source":"invented","tropilaelaps":"absent","varroa":"present","vespa":"absent"}}');
INSERT INTO skepsis_main.entries VALUES (7, '019cd1a0-c3e0-7eab-8b72-72f67176a1c0', 'office-1', 6, 'apiary-hollow', 'flow-recorded', 'd827309fee62743aa5a75a8bbde84d6508de92b78ed67ade39e39be99f67283e', '{"id":"019cd1a0-c3e0-7eab-8b72-72f67176a1c0","kind":"flow-recorded","schema":1,"device":"office-1","seq":6,"prev":"08466feba3e19b3ee6ecb9c984da8c37f40f555f067892c98e6d19e99603c969","at":"2026-03-02","recordedAt":"2026-03-09T08:05:00.000Z","author":"Office","programme":"main","about":["apiary-hollow","flow-1"],"replaces":[],"content":"3bef334e50bfcb905d5290f06fee475e9d6e4e9427ada1b7fffd12bb0661b52a"}', '{"salt":"fe6cfc6ece08ed08f9432a2cdc96e5d1","data":{"from":"2026-06-10","name":"clover","to":"2026-07-20"}}');
INSERT INTO skepsis_main.entries VALUES (8, '019cd1a1-ae40-7da6-ac16-0afdd9d00fd8', 'office-1', 7, 'apiary-hollow', 'supers-recorded', '5c7f56f0e2b5876ac4af3313ccd67c48f9deb860314b249ac67512729831cff0', '{"id":"019cd1a1-ae40-7da6-ac16-0afdd9d00fd8","kind":"supers-recorded","schema":1,"device":"office-1","seq":7,"prev":"d827309fee62743aa5a75a8bbde84d6508de92b78ed67ade39e39be99f67283e","at":"2026-03-02","recordedAt":"2026-03-09T08:06:00.000Z","author":"Office","programme":"main","about":["apiary-hollow","supers-1"],"replaces":[],"content":"cdf693c32830bacf4ec808377f00d04c4bd553b8f280a8a85b41d9d1a91132ba"}', '{"salt":"4cc28d8c24e1aef599b0df8db7f974c5","data":{"colonies":[],"off":null,"on":"2026-06-01"}}');
INSERT INTO skepsis_main.entries VALUES (9, '019cd1a2-98a0-77b9-9647-917f4f8d346d', 'office-1', 8, 'apiary-hollow', 'treatment-recorded', 'a4b685b3bbbf77d3d630486838bc9bd1b1106f30404b8eb160b0810cc81c68b2', '{"id":"019cd1a2-98a0-77b9-9647-917f4f8d346d","kind":"treatment-recorded","schema":1,"device":"office-1","seq":8,"prev":"5c7f56f0e2b5876ac4af3313ccd67c48f9deb860314b249ac67512729831cff0","at":"2026-03-02","recordedAt":"2026-03-09T08:07:00.000Z","author":"Office","programme":"main","about":["apiary-hollow","treatment-1"],"replaces":[],"content":"086652e557f93c2debe0ffcc1fe0936cdbd5ef0eaa7ce1efb0c4f55eae4fb705"}', '{"salt":"ac45487917524074ec964b598b639b1e","data":{"activeIngredient":"thymol","colonies":[],"off":"2025-09-29","on":"2025-09-01"}}');
INSERT INTO skepsis_main.entries VALUES (10, '019cd1a3-8300-7c69-bf9b-0a8174eaa53f', 'office-1', 9, 'case-1', 'case-opened', 'f0d925f56dfc53869a8b78050ea8cf8e232329d56bf1f0f979665a8445482d05', '{"id":"019cd1a3-8300-7c69-bf9b-0a8174eaa53f","kind":"case-opened","schema":1,"device":"office-1","seq":9,"prev":"a4b685b3bbbf77d3d630486838bc9bd1b1106f30404b8eb160b0810cc81c68b2","at":"2026-03-09","recordedAt":"2026-03-09T08:08:00.000Z","author":"Office","programme":"main","about":["case-1","apiary-hollow"],"replaces":[],"content":"d2941156cb812e606c85cc365882bbb70842d93a4dbf202302d2c01888e8f827"}', '{"salt":"2cde3b1004b61877e5f23b3985749a28","data":{"alreadyDone":"Fed sugar twice.","beganOn":"2026-03-07","code":"2026-014","colonies":["colony-1","colony-2"],"coloniesInApiary":2,"due":"2026-03-16","openedOn":"2026-03-09","question":"Why do bees crawl in front of the hives?","story":"They crawl and do not fly since the first warm day.","waitsOn":"office"}}');
INSERT INTO skepsis_main.entries VALUES (11, '019cd1a4-6d60-7791-aa64-5b37e32ff36b', 'office-1', 10, 'case-1', 'red-flag-answered', '560c3b992f99e6a79ee2cee7468d280c14460ef7363b12dcde40b617ec68a4ab', '{"id":"019cd1a4-6d60-7791-aa64-5b37e32ff36b","kind":"red-flag-answered","schema":1,"device":"office-1","seq":10,"prev":"f0d925f56dfc53869a8b78050ea8cf8e232329d56bf1f0f979665a8445482d05","at":"2026-03-09","recordedAt":"2026-03-09T08:09:00.000Z","author":"Office","programme":"main","about":["case-1","ropy_brood"],"replaces":[],"content":"cf2b778404edfbea5c185ee5cdfcf1d24d9283c1ed17df903d4e7a4aa58e41f7"}', '{"salt":"d3e40d2379dcfbeb356f8facdc1aa056","data":{"flag":"ropy_brood","on":"2026-03-09","state":"absent"}}');
INSERT INTO skepsis_main.entries VALUES (12, '019cd1a5-57c0-78ef-a799-6d2895f8a9b9', 'office-1', 11, 'case-1', 'finding-recorded', 'a0a5bb8a9c82287dcbe3cdf2122a6c66bb8d895b9e2ac99fd0c52ef7c160821e', '{"id":"019cd1a5-57c0-78ef-a799-6d2895f8a9b9","kind":"finding-recorded","schema":1,"device":"office-1","seq":11,"prev":"560c3b992f99e6a79ee2cee7468d280c14460ef7363b12dcde40b617ec68a4ab","at":"2026-03-09","recordedAt":"2026-03-09T08:10:00.000Z","author":"Office","programme":"main","about":["case-1","colony-1"],"replaces":[],"content":"c69d5d353147bc5685258e3bf3f100630884fab915163fb1a45e018e8c496aab"}', '{"salt":"910670f126bc8f6669512757f4195423","data":{"colony":"colony-1","finding":"crawlers","knownFrom":"told","on":"2026-03-09","state":"present"}}');
INSERT INTO skepsis_main.entries VALUES (13, '019cd1a6-4220-7009-ad96-f8ba1d33f751', 'office-1', 12, 'case-1', 'finding-recorded', 'b9868fc81a2fb22151d85a14da4d50909747b29481882aabaf1f34818e6ff38c', '{"id":"019cd1a6-4220-7009-ad96-f8ba1d33f751","kind":"finding-recorded","schema":1,"device":"office-1","seq":12,"prev":"a0a5bb8a9c82287dcbe3cdf2122a6c66bb8d895b9e2ac99fd0c52ef7c160821e","at":"2026-03-09","recordedAt":"2026-03-09T08:11:00.000Z","author":"Office","programme":"main","about":["case-1"],"replaces":[],"content":"3ab231dc71893644f3e8ed3f61955cccf3fa74f90506826d911f8219f308fab3"}', '{"salt":"45435ffc33a41bd6cab601504df0274f","data":{"colony":null,"finding":"spray_nearby","on":"2026-03-09","state":"not-looked"}}');
INSERT INTO skepsis_main.entries VALUES (14, '019cd1a7-2c80-70a0-8e4f-b8b1f83acd18', 'office-1', 13, 'case-1', 'colony-state-recorded', '072cea974e4cb4300691b7727a9784ad95dd91c71bdcf735782687b44bb9fb1c', '{"id":"019cd1a7-2c80-70a0-8e4f-b8b1f83acd18","kind":"colony-state-recorded","schema":1,"device":"office-1","seq":13,"prev":"b9868fc81a2fb22151d85a14da4d50909747b29481882aabaf1f34818e6ff38c","at":"2026-03-09","recordedAt":"2026-03-09T08:12:00.000Z","author":"Office","programme":"main","about":["case-1","colony-1"],"replaces":[],"content":"e89ca7adbb1ced29fee27464ca0389bf23a6c2b03820e43962620dc89bb651b1"}', '{"salt":"08a498f7d8810d8e275d09ab2ace438c","data":{"colony":"colony-1","on":"2026-03-09","state":"dying"}}');
INSERT INTO skepsis_main.entries VALUES (15, '019cd1a8-16e0-7fec-bf63-bd838e70cd45', 'office-1', 14, 'case-1', 'step-planned', '5c931afb48896a33907b8df652ad6b451e2819a5dba59afd819ed902900ed9b9', '{"id":"019cd1a8-16e0-7fec-bf63-bd838e70cd45","kind":"step-planned","schema":1,"device":"office-1","seq":14,"prev":"072cea974e4cb4300691b7727a9784ad95dd91c71bdcf735782687b44bb9fb1c","at":"2026-03-10","recordedAt":"2026-03-09T08:13:00.000Z","author":"Office","programme":"main","about":["case-1"],"replaces":[],"content":"d324058d9581cab925fc6668c665c45b3834d3deea16728ba3d6b52590a4b93d"}', '{"salt":"1229b159d0a32f1019bdd1a427ce8f4f","data":{"colonies":["colony-1"],"kind":"test","state":"planned","step":"tracheal-dissection"}}');
INSERT INTO skepsis_main.entries VALUES (16, '019cd1a9-0140-76f4-858d-df980f8d83c3', 'office-1', 15, 'case-1', 'sampling-planned', 'aadb3157bf96d6820924f75aae6b42c6e04c9da25012740b2bd68a45dd18b79c', '{"id":"019cd1a9-0140-76f4-858d-df980f8d83c3","kind":"sampling-planned","schema":1,"device":"office-1","seq":15,"prev":"5c931afb48896a33907b8df652ad6b451e2819a5dba59afd819ed902900ed9b9","at":"2026-03-10","recordedAt":"2026-03-09T08:14:00.000Z","author":"Office","programme":"main","about":["case-1","sample-plan-1"],"replaces":[],"content":"7c8bb756f0e738970b3eee6d86d035937098827560789524e0e96f0d38d9e048"}', '{"salt":"d56c5cb1ca682600d32504fb7baa3bd5","data":{"beesPerColony":5,"colonies":["colony-1"],"confidence":0.95,"designPrevalence":0.5,"from":"S","on":"2026-03-10","preservative":"ethanol-70","purpose":"detect","sensitivity":0.9}}');
INSERT INTO skepsis_main.entries VALUES (17, '019cd1a9-eba0-7190-87d4-89df64e1dd2b', 'office-1', 16, 'case-1', 'case-handed-on', '842eef69f2c48bacbbedb9a022c51ed8a29389356d362a1e8abd4f62edb15db7', '{"id":"019cd1a9-eba0-7190-87d4-89df64e1dd2b","kind":"case-handed-on","schema":1,"device":"office-1","seq":16,"prev":"aadb3157bf96d6820924f75aae6b42c6e04c9da25012740b2bd68a45dd18b79c","at":"2026-03-10","recordedAt":"2026-03-09T08:15:00.000Z","author":"Office","programme":"main","about":["case-1"],"replaces":[],"content":"9af6b8ac88c8a143d47fb53afff0d928e061198e2da24609d819f214b488bead"}', '{"salt":"fe4e7deaf964b41eb598016200fe704b","data":{"due":"2026-03-20","waitsOn":"bench"}}');
INSERT INTO skepsis_main.entries VALUES (18, '019cd1aa-d600-7311-bbc4-177cfa83ee5b', 'office-1', 17, 'specimen-1', 'specimen-labelled', 'efed004cde9149af9e935b158c968c78b7437a662ccb7b4183ad37fbc8e0729a', '{"id":"019cd1aa-d600-7311-bbc4-177cfa83ee5b","kind":"specimen-labelled","schema":1,"device":"office-1","seq":17,"prev":"842eef69f2c48bacbbedb9a022c51ed8a29389356d362a1e8abd4f62edb15db7","at":"2026-03-10","recordedAt":"2026-03-09T08:16:00.000Z","author":"Office","programme":"main","about":["specimen-1","case-1","colony-1"],"replaces":[],"content":"2fc8b6961d23791d6e8dc4bfddf00eb5486f81a2255e71790d543cbf9ae197ba"}', '{"salt":"e263ef841716d87938c182b8f4f4e70c","data":{"case":"case-1","code":"2026-014-1","colony":"colony-1","from":"S","preservative":"ethanol-70","purpose":"detect","takenOn":null}}');
INSERT INTO skepsis_main.entries VALUES (19, '019cd1ab-c060-7989-acec-dbc321598396', 'office-1', 18, 'specimen-1', 'specimen-received', 'e12507a38aa2211ef39f137e7846e103e19468675abe713706b02849c27976a9', '{"id":"019cd1ab-c060-7989-acec-dbc321598396","kind":"specimen-received","schema":1,"device":"office-1","seq":18,"prev":"efed004cde9149af9e935b158c968c78b7437a662ccb7b4183ad37fbc8e0729a","at":"2026-03-16","recordedAt":"2026-03-09T08:17:00.000Z","author":"Office","programme":"main","about":["specimen-1"],"replaces":[],"content":"0ddf8296aff37be02c90401bdc55244a6cba5430a40adb8d0a506e1b019d8c05"}', '{"salt":"34fece179e0379a9f7ede14dfb606c80","data":{"acceptance":"accepted","aliveWhenTaken":true,"beesReceived":6,"condition":0,"on":"2026-03-16","takenOn":"2026-03-11"}}');
INSERT INTO skepsis_main.entries VALUES (20, '019cd1ac-aac0-7cd3-9bb1-d8b10cb41fb3', 'office-1', 19, 'specimen-1', 'reading-started', 'e928cf2da4162ac6541375131ded789ac3542321fcf5dc765ab88324f9330763', '{"id":"019cd1ac-aac0-7cd3-9bb1-d8b10cb41fb3","kind":"reading-started","schema":1,"device":"office-1","seq":19,"prev":"e12507a38aa2211ef39f137e7846e103e19468675abe713706b02849c27976a9","at":"2026-03-16","recordedAt":"2026-03-09T08:18:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"5db0d92d1f09842fdac9dfca915a94608b7674c6c1ae6fcb8a9e61f771acbc32"}', '{"salt":"ad6b4a3d3ffb2a46fd72ee5900e868eb","data":{"method":"thoracic-disc","on":"2026-03-16","reader":"reader A","reading":"reading-1","target":5}}');
INSERT INTO skepsis_main.entries VALUES (21, '019cd1ad-9520-7923-aec4-f5c2946cd0ee', 'office-1', 20, 'specimen-1', 'bee-read', '5e09e9f215144d58aaaa57547542cac85de683c9875dfc97cde09efb164756a6', '{"id":"019cd1ad-9520-7923-aec4-f5c2946cd0ee","kind":"bee-read","schema":1,"device":"office-1","seq":20,"prev":"e928cf2da4162ac6541375131ded789ac3542321fcf5dc765ab88324f9330763","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:19:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"b58b13123725b450b071c776f44cc10d7e5e6873f473c6d4cdd145cb806acd0b"}', '{"salt":"895b7b643d41a5bae16b706ca3f0fe7d","data":{"bee":1,"left":"clear","lost":false,"reading":"reading-1","right":"clear"}}');
INSERT INTO skepsis_main.entries VALUES (22, '019cd1ae-7f80-7317-9ebb-2e04f801cbce', 'office-1', 21, 'specimen-1', 'bee-read', '6bfa4edb959a2ea3d56bf2223f2cf5d4efdf1c92ea3bd68b4a64b806bcf533e5', '{"id":"019cd1ae-7f80-7317-9ebb-2e04f801cbce","kind":"bee-read","schema":1,"device":"office-1","seq":21,"prev":"5e09e9f215144d58aaaa57547542cac85de683c9875dfc97cde09efb164756a6","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:20:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"07fa911a20b28875bb77c25e529c388fef25833ceb31438971c77b7fb7c09a74"}', '{"salt":"7b39bf9b0df205df615e94104cf58418","data":{"bee":2,"left":"mites","lost":false,"reading":"reading-1","right":"clear"}}');
INSERT INTO skepsis_main.entries VALUES (23, '019cd1af-69e0-7e6d-95cd-c4bb3c84b004', 'office-1', 22, 'specimen-1', 'bee-read', '713067e673fae8f23c6a5cf26cf076ce29f454d9060256e0bde017e54c8db3e8', '{"id":"019cd1af-69e0-7e6d-95cd-c4bb3c84b004","kind":"bee-read","schema":1,"device":"office-1","seq":22,"prev":"6bfa4edb959a2ea3d56bf2223f2cf5d4efdf1c92ea3bd68b4a64b806bcf533e5","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:21:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"9c82dd63095c7fecbcf1d2d0d529abe214a8898d6aaa9b14b434164ae009ac3a"}', '{"salt":"82ceb822f9da09997c368cb7821fa3a4","data":{"bee":3,"left":"clear","lost":false,"reading":"reading-1","right":"unreadable"}}');
INSERT INTO skepsis_main.entries VALUES (24, '019cd1b0-5440-7d4b-ab91-0338769a7578', 'office-1', 23, 'specimen-1', 'bee-read', 'b0023964b974701bf89afec48f4c31206d50cb1303e3481811d0da63a6080151', '{"id":"019cd1b0-5440-7d4b-ab91-0338769a7578","kind":"bee-read","schema":1,"device":"office-1","seq":23,"prev":"713067e673fae8f23c6a5cf26cf076ce29f454d9060256e0bde017e54c8db3e8","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:22:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"2891ef6e2fddad78da641ac2d78e7a8b31d772139f245f72498aa0fb29a9be4b"}', '{"salt":"bc7fabe675d06b9c40dc601d15a208ef","data":{"bee":4,"left":"clear","lost":false,"reading":"reading-1","right":"clear"}}');
INSERT INTO skepsis_main.entries VALUES (25, '019cd1b1-3ea0-7b22-805c-884c37129487', 'office-1', 24, 'specimen-1', 'bee-read', 'cc3fb3052dbeb7f4d3fef0db19a16e444037251a35d97067dae4b66f4e7950cb', '{"id":"019cd1b1-3ea0-7b22-805c-884c37129487","kind":"bee-read","schema":1,"device":"office-1","seq":24,"prev":"b0023964b974701bf89afec48f4c31206d50cb1303e3481811d0da63a6080151","at":"2026-03-16T09:05:00Z","recordedAt":"2026-03-09T08:23:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"02139e31941df972be4ac8644fc097b178522fb986b128bdf4360332e483925b"}', '{"salt":"9ac3035a2187dfb99ccc2e6040f11d29","data":{"bee":5,"left":null,"lost":true,"reading":"reading-1","right":null}}');
INSERT INTO skepsis_main.entries VALUES (26, '019cd1b2-2900-7aac-821f-fdf30599c3c0', 'office-1', 25, 'specimen-1', 'bee-read', 'fb306e47fec8f3d035f4bce9ee3c7e82f577a765a3c015187de1344a687cf59b', '{"id":"019cd1b2-2900-7aac-821f-fdf30599c3c0","kind":"bee-read","schema":1,"device":"office-1","seq":25,"prev":"cc3fb3052dbeb7f4d3fef0db19a16e444037251a35d97067dae4b66f4e7950cb","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:24:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":["019cd1af-69e0-7e6d-95cd-c4bb3c84b004"],"content":"198e5449bf32b2ed8f493ac03a44cbfc0a9e0a36bf8d2fe7f90ddefd2292487c"}', '{"salt":"ad3a340f953634d4cd7d6850fe80a692","data":{"bee":3,"left":"clear","lost":false,"reading":"reading-1","right":"mites"}}');
INSERT INTO skepsis_main.entries VALUES (27, '019cd1b3-1360-70ec-a012-f5edf20c8d20', 'office-1', 26, 'specimen-1', 'entry-withdrawn', 'e93ae8da6c3125f8bb8c303c151dc8dbfaac91dfd15acab6852b58f1b13cfdcc', '{"id":"019cd1b3-1360-70ec-a012-f5edf20c8d20","kind":"entry-withdrawn","schema":1,"device":"office-1","seq":26,"prev":"fb306e47fec8f3d035f4bce9ee3c7e82f577a765a3c015187de1344a687cf59b","at":"2026-03-16","recordedAt":"2026-03-09T08:25:00.000Z","author":"Office","programme":"main","about":["specimen-1"],"replaces":["019cd1b0-5440-7d4b-ab91-0338769a7578"],"content":"d636191a695b31dccd91175343d95e17b2a42831c7651a275ad6a5de23149410"}', '{"salt":"0be66d5c21f2087ab4459da6ef359686","data":{"reason":"pressed twice"}}');
INSERT INTO skepsis_main.entries VALUES (28, '019cd1b3-fdc0-7134-9de6-3f3d399bb991', 'office-1', 27, 'specimen-1', 'bee-read', 'f3a28d8d515f5dade09f53795e59f6cdbc01ae1bf5ab937530eeda31f6001c46', '{"id":"019cd1b3-fdc0-7134-9de6-3f3d399bb991","kind":"bee-read","schema":1,"device":"office-1","seq":27,"prev":"e93ae8da6c3125f8bb8c303c151dc8dbfaac91dfd15acab6852b58f1b13cfdcc","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:26:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"6cf9e8c741b3f1f536a5f2f790fbb219a7d6c1b11f2c295c2b8cca6c6c43d4fb"}', '{"salt":"0c76250d15dd00a0fee3bdd1ff0ea435","data":{"bee":4,"left":"dark-no-mite","lost":false,"reading":"reading-1","right":"clear"}}');
INSERT INTO skepsis_main.entries VALUES (29, '019cd1b4-e820-70f0-8c35-92dcb783d18a', 'office-1', 28, 'specimen-1', 'reading-finished', 'b6156f8d89f1481048281a195db9bbe2405c22d421853c59f9819596a47aa744', '{"id":"019cd1b4-e820-70f0-8c35-92dcb783d18a","kind":"reading-finished","schema":1,"device":"office-1","seq":28,"prev":"f3a28d8d515f5dade09f53795e59f6cdbc01ae1bf5ab937530eeda31f6001c46","at":"2026-03-16","recordedAt":"2026-03-09T08:27:00.000Z","author":"Office","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"0b3251eb65529a4e76c1265962f0158e0062e8c5e9ecafda9da04682003cb87e"}', '{"salt":"c7328077f45b91d58c6ef86c24a863ca","data":{"on":"2026-03-16","reading":"reading-1","stop":"target-reached"}}');
INSERT INTO skepsis_main.entries VALUES (30, '019cd1b5-d280-712c-9d1d-8941cee53383', 'office-1', 29, 'case-1', 'test-result-recorded', 'f432eadfe9e24e25a03dbce2b79fa9217317ffd837e04adc9dd02abccd414214', '{"id":"019cd1b5-d280-712c-9d1d-8941cee53383","kind":"test-result-recorded","schema":2,"device":"office-1","seq":29,"prev":"b6156f8d89f1481048281a195db9bbe2405c22d421853c59f9819596a47aa744","at":"2026-03-16","recordedAt":"2026-03-09T08:28:00.000Z","author":"Office","programme":"main","about":["case-1","colony-1"],"replaces":[],"content":"ad8f2da8d343ad2266bb92e746e9ab3c02807406b7c6040c688f50d0b06a9f7d"}', '{"salt":"2b3929331ce44cb583132e07ba297f52","data":{"bees":300,"colony":"colony-1","kept":"fresh","mites":2,"on":"2026-03-16","test":"varroa-wash"}}');
INSERT INTO skepsis_main.entries VALUES (31, '019cd1b6-bce0-7849-8744-b818ada357d5', 'office-1', 30, 'case-1', 'decision-recorded', '4ba6f26832553e6d13844e50cdef2518c62e6cf67fc3d96e7ec5cd506ed773fc', '{"id":"019cd1b6-bce0-7849-8744-b818ada357d5","kind":"decision-recorded","schema":1,"device":"office-1","seq":30,"prev":"f432eadfe9e24e25a03dbce2b79fa9217317ffd837e04adc9dd02abccd414214","at":"2026-03-17","recordedAt":"2026-03-09T08:29:00.000Z","author":"Office","programme":"main","about":["case-1"],"replaces":[],"content":"deabc5307c831c89a290e1823762d06f2af096dabf54c1990aa97d70a6b43caa"}', '{"salt":"9c6e2c2c5b7878e8fb9ce3fcbebd7415","data":{"choice":"act-now","colonies":["colony-1"],"on":"2026-03-17","reason":"One of three bees read in full has mites.","reviewOn":"2026-04-17"}}');
INSERT INTO skepsis_main.entries VALUES (32, '019cd1b7-a740-73b0-aec6-f19c09ff9f0d', 'office-1', 31, 'label-record-1', 'label-record-loaded', 'def7d7e6f0ffd4d4cd364350ae2c092976145c2a77d855d00b2f4f701ffb2b1d', '{"id":"019cd1b7-a740-73b0-aec6-f19c09ff9f0d","kind":"label-record-loaded","schema":1,"device":"office-1","seq":31,"prev":"4ba6f26832553e6d13844e50cdef2518c62e6cf67fc3d96e7ec5cd506ed773fc","at":"2026-03-17","recordedAt":"2026-03-09T08:30:00.000Z","author":"Office","programme":"main","about":["label-record-1"],"replaces":[],"content":"7ab569690953180fab862a1f1b6d824a59f1db601b495f4b0909542a1f134823"}', '{"salt":"561f73ca21b32857ee4b59999ed530bb","data":{"activeIngredient":"menthol","applications":1,"daysBeforeSupers":28,"daysBetweenApplications":0,"doseGramsPerColony":1,"durationDays":14,"invented":true,"jurisdiction":"Invented County","maxDailyHighCelsius":26,"minDailyHighCelsius":15,"placement":"invented","readOn":"2026-03-17","source":"invented for tests: no label says this","supersAllowed":false}}');
INSERT INTO skepsis_main.entries VALUES (33, '019cd1b8-91a0-7779-91ba-91af0e4c22af', 'office-1', 32, 'plan-1', 'plan-made', '000e3b90ac01f59fbf15d474f6e1029981e7bdba2f126656d537c543a61f2954', '{"id":"019cd1b8-91a0-7779-91ba-91af0e4c22af","kind":"plan-made","schema":1,"device":"office-1","seq":32,"prev":"def7d7e6f0ffd4d4cd364350ae2c092976145c2a77d855d00b2f4f701ffb2b1d","at":"2026-03-17","recordedAt":"2026-03-09T08:31:00.000Z","author":"Office","programme":"main","about":["plan-1","case-1"],"replaces":[],"content":"5ea8d67299f4531a3feb9897b94b2d13d50e9d0c4caee0a303b5c345d9ec1c01"}', '{"salt":"619b4eb9f0699a2b5002ebbb051c8863","data":{"case":"case-1","colonies":["colony-1"],"control":"menthol","labelRecord":"label-record-1","madeOn":"2026-03-17","steps":[{"gramsInAll":1,"gramsPerColony":1,"kind":"apply","note":"invented dose","on":"2026-04-20","step":"apply-1","until":"2026-05-04"},{"gramsInAll":null,"gramsPerColony":null,"kind":"recheck","note":"","on":"2026-06-01","step":"recheck-1","until":null}],"version":1}}');
INSERT INTO skepsis_main.entries VALUES (34, '019cd1b9-7c00-76a0-92e1-527570d59393', 'office-1', 33, 'plan-1', 'plan-step-done', '8c9ec8074af200cec5ef158a2632dcb4bfe2c29205d85c65ea18aa506f062a5a', '{"id":"019cd1b9-7c00-76a0-92e1-527570d59393","kind":"plan-step-done","schema":1,"device":"office-1","seq":33,"prev":"000e3b90ac01f59fbf15d474f6e1029981e7bdba2f126656d537c543a61f2954","at":"2026-04-21","recordedAt":"2026-03-09T08:32:00.000Z","author":"Office","programme":"main","about":["plan-1"],"replaces":[],"content":"23c040b8c0125c2b94937ac3f544332fc5fa413f7b6c66e0f6f38cf0d87d654a"}', '{"salt":"ff8df5b8ca83df49e9d39d8742c7a014","data":{"deviation":"One day late: rain.","on":"2026-04-21","state":"done","step":"apply-1"}}');
INSERT INTO skepsis_main.entries VALUES (35, '019cd1ba-6660-75b4-9618-99291ad5b7cc', 'office-1', 34, 'case-1', 'outcome-recorded', '626169320619188585a75ef389cd587a01903e09fc55e1df8e3ad31cee9ce2ee', '{"id":"019cd1ba-6660-75b4-9618-99291ad5b7cc","kind":"outcome-recorded","schema":1,"device":"office-1","seq":34,"prev":"8c9ec8074af200cec5ef158a2632dcb4bfe2c29205d85c65ea18aa506f062a5a","at":"2026-06-01","recordedAt":"2026-03-09T08:33:00.000Z","author":"Office","programme":"main","about":["case-1","colony-1"],"replaces":[],"content":"6bf14d514620dece91c37892de800ddc4f852c3b7337e37d88ddce152529a0ce"}', '{"salt":"0218084bbf665498ee0e8ac556d82a35","data":{"colony":"colony-1","on":"2026-06-01","survived":true}}');
INSERT INTO skepsis_main.entries VALUES (37, '019cd1bc-3b20-76a8-9424-5eb827e8a9c0', 'office-1', 36, 'case-1', 'content-erased', 'f5380204e0d3edf96d91578de7f1b485fa82128660cd112aa8e7cb5f9ca650fe', '{"id":"019cd1bc-3b20-76a8-9424-5eb827e8a9c0","kind":"content-erased","schema":1,"device":"office-1","seq":36,"prev":"daa33448658aeaa7c37bb1c530d5c6de50038ed67e51c44ede0b40bbb9db06d9","at":"2026-06-01","recordedAt":"2026-03-09T08:35:00.000Z","author":"Office","programme":"main","about":["case-1"],"replaces":[],"content":"6da8f9a4ed06ba7d042073bc0113f0cfcb68bf739100d941efa5781b4f915961"}', '{"salt":"b3079c6972b66a529d6ecfb1956bb0f1","data":{"entries":["019cd1bb-50c0-7da8-ba41-647b2042e65a"],"reason":"a name stood in the note"}}');
INSERT INTO skepsis_main.entries VALUES (38, '019cd1bd-2580-7a37-ac87-794e9ca5b8bf', 'office-1', 37, 'case-1', 'case-closed', '495f82f7ec96b1e8b2001867a403599980c14e9cc86157c7d98f1c86c4562c91', '{"id":"019cd1bd-2580-7a37-ac87-794e9ca5b8bf","kind":"case-closed","schema":1,"device":"office-1","seq":37,"prev":"f5380204e0d3edf96d91578de7f1b485fa82128660cd112aa8e7cb5f9ca650fe","at":"2026-06-02","recordedAt":"2026-03-09T08:36:00.000Z","author":"Office","programme":"main","about":["case-1"],"replaces":[],"content":"b601d427a54788d57ed1a6d597aa280a798fadbfcad355699d51f19d1ea89263"}', '{"salt":"6694ce66599c564c611c5cfe9e3dea81","data":{"confirmedBy":"bench","confirmedCauses":["acarapis_woodi"],"on":"2026-06-02","outcome":"answered"}}');
INSERT INTO skepsis_main.entries VALUES (39, '019cd1be-0fe0-7f7f-8730-32458023d8fc', 'office-1', 38, 'main', 'heads-noted', '459e9c3ada133ad264d14454403c4081fd93aaa5ca03a2bb9e50709cdb4a8bac', '{"id":"019cd1be-0fe0-7f7f-8730-32458023d8fc","kind":"heads-noted","schema":1,"device":"office-1","seq":38,"prev":"495f82f7ec96b1e8b2001867a403599980c14e9cc86157c7d98f1c86c4562c91","at":"2026-06-02","recordedAt":"2026-03-09T08:37:00.000Z","author":"Office","programme":"main","about":["main"],"replaces":[],"content":"6a899453110d8b65a95528d73cdf9c68cbf34fc6e48c5173b0e9d8ad4b7e8de3"}', '{"salt":"1037ef3ef239f8903b2ecda1be2102c9","data":{"heads":[{"device":"office-1","hash":"495f82f7ec96b1e8b2001867a403599980c14e9cc86157c7d98f1c86c4562c91","seq":37}]}}');
INSERT INTO skepsis_main.entries VALUES (40, '019cd19c-a530-74ab-807b-fa9e0def88e2', 'phone-1', 1, 'case-1', 'finding-recorded', '193022e96695613ed2ff06851d44ae4ac355baabb7fa7422cee0fabad98aae11', '{"id":"019cd19c-a530-74ab-807b-fa9e0def88e2","kind":"finding-recorded","schema":1,"device":"phone-1","seq":1,"prev":null,"at":"2026-03-09","recordedAt":"2026-03-09T08:00:30.000Z","author":"Yard","programme":"main","about":["case-1","colony-1"],"replaces":[],"content":"ea5962e25216a15cd419a6562fee96910f78c2636853088243f7398cf181bd72"}', '{"salt":"a5a01dfc4318a535488a455c32d13f89","data":{"colony":"colony-1","finding":"crawlers","on":"2026-03-09","state":"absent"}}');
INSERT INTO skepsis_main.entries VALUES (36, '019cd1bb-50c0-7da8-ba41-647b2042e65a', 'office-1', 35, 'case-1', 'finding-recorded', 'daa33448658aeaa7c37bb1c530d5c6de50038ed67e51c44ede0b40bbb9db06d9', '{"id":"019cd1bb-50c0-7da8-ba41-647b2042e65a","kind":"finding-recorded","schema":1,"device":"office-1","seq":35,"prev":"626169320619188585a75ef389cd587a01903e09fc55e1df8e3ad31cee9ce2ee","at":"2026-06-01","recordedAt":"2026-03-09T08:34:00.000Z","author":"Office","programme":"main","about":["case-1","colony-2"],"replaces":[],"content":"e2386e72fc6f30f43a7a8f5b7bdb904737b3b67b5ac002d09cbcef51b6351beb"}', NULL);
INSERT INTO skepsis_main.erased VALUES ('019cd1bb-50c0-7da8-ba41-647b2042e65a', 'case-1');
INSERT INTO skepsis_main.heads VALUES ('copied-phone', 1, '96439e20f9a63f52c4d16a513a1e7d2dcd27d1ba229a8112811b585b26ea87d3');
INSERT INTO skepsis_main.heads VALUES ('office-1', 38, '459e9c3ada133ad264d14454403c4081fd93aaa5ca03a2bb9e50709cdb4a8bac');
INSERT INTO skepsis_main.heads VALUES ('phone-1', 1, '193022e96695613ed2ff06851d44ae4ac355baabb7fa7422cee0fabad98aae11');
INSERT INTO skepsis_main.migrations VALUES (1, 'journal-as-first-released');
INSERT INTO skepsis_main.migrations VALUES (2, 'no-index-by-kind');
INSERT INTO skepsis_main.migrations VALUES (3, 'members-and-devices');
INSERT INTO skepsis_main.migrations VALUES (4, 'files-of-entries');
INSERT INTO skepsis_main.migrations VALUES (5, 'passwords-that-run-out');
INSERT INTO skepsis_main.migrations VALUES (6, 'files-by-sender');
INSERT INTO skepsis_main.parents VALUES ('case-1', 'apiary-hollow');
INSERT INTO skepsis_main.parents VALUES ('specimen-1', 'case-1');
INSERT INTO skepsis_main.parents VALUES ('plan-1', 'case-1');
INSERT INTO skepsis_main.quarantine VALUES ('bd0e5cdc01936cc381b62fa89fafab74f0ea136529d6088fa63b60dc72ef1506', '{"header":{"id":"019cd20a-0d00-7df7-b68a-a3492b2b7ee0","kind":"bee-read","schema":1,"device":"copied-phone","seq":1,"prev":null,"at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T10:00:00.000Z","author":"R. Vale","programme":"main","about":["specimen-1","reading-1"],"replaces":[],"content":"e354d905cafe5c23b1242a6a7cfb1b2b06ab12c19ae3d76bb489b9f30e2d402f"},"body":{"salt":"3df275a497e1c83e8d2b847b2ba9074f","data":{"bee":1,"left":"mites","lost":false,"reading":"reading-1","right":"clear"}}}');
INSERT INTO skepsis_main.scopes VALUES ('*', 'label-record-1', 32);
INSERT INTO skepsis_main.scopes VALUES ('*', 'main', 39);
INSERT INTO skepsis_main.states VALUES ('specimen-1', 5, 40, '460362187fa05e9eb12f75638c4946ef {"apiaries":{},"cases":{},"specimens":{"specimen-1":{"root":"specimen","id":"specimen-1","case":"case-1","colony":"colony-1","label":{"candidates":[{"value":{"code":"2026-014-1","case":"case-1","colony":"colony-1","takenOn":null,"from":"S","preservative":"ethanol-70","purpose":"detect"},"entry":"019cd1aa-d600-7311-bbc4-177cfa83ee5b","at":"2026-03-10","recordedAt":"2026-03-09T08:16:00.000Z","author":"Office","device":"office-1"}]},"received":{"candidates":[{"value":{"on":"2026-03-16","takenOn":"2026-03-11","condition":0,"beesReceived":6,"aliveWhenTaken":true,"acceptance":"accepted"},"entry":"019cd1ab-c060-7989-acec-dbc321598396","at":"2026-03-16","recordedAt":"2026-03-09T08:17:00.000Z","author":"Office","device":"office-1"}]},"readings":{"reading-1":{"id":"reading-1","started":{"candidates":[{"value":{"reading":"reading-1","reader":"reader A","on":"2026-03-16","method":"thoracic-disc","target":5},"entry":"019cd1ac-aac0-7cd3-9bb1-d8b10cb41fb3","at":"2026-03-16","recordedAt":"2026-03-09T08:18:00.000Z","author":"Office","device":"office-1"}]},"bees":{"1":{"candidates":[{"value":{"reading":"reading-1","bee":1,"lost":false,"left":"clear","right":"clear"},"entry":"019cd19c-3000-7df7-b68a-a3492b2b7ee0","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:00:00.000Z","author":"R. Vale","device":"copied-phone"},{"value":{"reading":"reading-1","bee":1,"lost":false,"left":"clear","right":"clear"},"entry":"019cd1ad-9520-7923-aec4-f5c2946cd0ee","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:19:00.000Z","author":"Office","device":"office-1"}]},"2":{"candidates":[{"value":{"reading":"reading-1","bee":2,"lost":false,"left":"mites","right":"clear"},"entry":"019cd1ae-7f80-7317-9ebb-2e04f801cbce","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:20:00.000Z","author":"Office","device":"office-1"}]},"3":{"candidates":[{"value":{"reading":"reading-1","bee":3,"lost":false,"left":"clear","right":"mites"},"entry":"019cd1b2-2900-7aac-821f-fdf30599c3c0","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:24:00.000Z","author":"Office","device":"office-1"}]},"4":{"candidates":[{"value":{"reading":"reading-1","bee":4,"lost":false,"left":"dark-no-mite","right":"clear"},"entry":"019cd1b3-fdc0-7134-9de6-3f3d399bb991","at":"2026-03-16T09:00:00Z","recordedAt":"2026-03-09T08:26:00.000Z","author":"Office","device":"office-1"}]},"5":{"candidates":[{"value":{"reading":"reading-1","bee":5,"lost":true,"left":null,"right":null},"entry":"019cd1b1-3ea0-7b22-805c-884c37129487","at":"2026-03-16T09:05:00Z","recordedAt":"2026-03-09T08:23:00.000Z","author":"Office","device":"office-1"}]}},"finished":{"candidates":[{"value":{"reading":"reading-1","on":"2026-03-16","stop":"target-reached"},"entry":"019cd1b4-e820-70f0-8c35-92dcb783d18a","at":"2026-03-16","recordedAt":"2026-03-09T08:27:00.000Z","author":"Office","device":"office-1"}]}}}}},"plans":{},"labelRecords":{},"programmes":{},"unread":[]}');
INSERT INTO skepsis_main.states VALUES ('apiary-hollow', 5, 40, 'fc9054024bb5636a977b0364e109abe3 {"apiaries":{"apiary-hollow":{"root":"apiary","id":"apiary-hollow","record":{"candidates":[{"value":{"code":"HO","name":"Hollow Meadow","place":"Invented County","latitude":45.2,"longitude":-93.1},"entry":"019cd19c-3000-7af0-8425-49f75c4206c9","at":"2026-03-02","recordedAt":"2026-03-09T08:00:00.000Z","author":"Office","device":"office-1"}]},"colonies":{"colony-1":{"id":"colony-1","record":{"candidates":[{"value":{"code":"HO-1","hiveType":"ten-frame"},"entry":"019cd19d-1a60-7da2-8e44-3f297405d887","at":"2026-03-02","recordedAt":"2026-03-09T08:01:00.000Z","author":"Office","device":"office-1"}]}},"colony-2":{"id":"colony-2","record":{"candidates":[{"value":{"code":"HO-2","hiveType":"ten-frame"},"entry":"019cd19e-04c0-7960-b11b-cef683209322","at":"2026-03-02","recordedAt":"2026-03-09T08:02:00.000Z","author":"Office","device":"office-1"}]}}},"weather":{"candidates":[{"value":{"kind":"monthly-means","monthlyMeanCelsius":[-9,-6,0,8,15,20,23,21,17,9,1,-6],"source":"invented"},"entry":"019cd19e-ef20-757c-a5f6-227491845263","at":"2026-03-02","recordedAt":"2026-03-09T08:03:00.000Z","author":"Office","device":"office-1"}]},"region":{"candidates":[{"value":{"varroa":"present","acarapisWoodi":"unknown","smallHiveBeetle":"absent","tropilaelaps":"absent","vespa":"absent","source":"invented"},"entry":"019cd19f-d980-7a80-9d05-c347956c0c05","at":"2026-03-02","recordedAt":"2026-03-09T08:04:00.000Z","author":"Office","device":"office-1"}]},"flows":{"flow-1":{"candidates":[{"value":{"name":"clover","from":"2026-06-10","to":"2026-07-20"},"entry":"019cd1a0-c3e0-7eab-8b72-72f67176a1c0","at":"2026-03-02","recordedAt":"2026-03-09T08:05:00.000Z","author":"Office","device":"office-1"}]}},"supers":{"supers-1":{"candidates":[{"value":{"on":"2026-06-01","off":null,"colonies":[]},"entry":"019cd1a1-ae40-7da6-ac16-0afdd9d00fd8","at":"2026-03-02","recordedAt":"2026-03-09T08:06:00.000Z","author":"Office","device":"office-1"}]}},"treatments":{"treatment-1":{"candidates":[{"value":{"activeIngredient":"thymol","on":"2025-09-01","off":"2025-09-29","colonies":[]},"entry":"019cd1a2-98a0-77b9-9647-917f4f8d346d","at":"2026-03-02","recordedAt":"2026-03-09T08:07:00.000Z","author":"Office","device":"office-1"}]}}}},"cases":{},"specimens":{},"plans":{},"labelRecords":{},"programmes":{},"unread":[]}');
INSERT INTO skepsis_main.states VALUES ('case-1', 5, 40, 'eff821dca2f108cacf6d9569dd4fc5f4 {"apiaries":{},"cases":{"case-1":{"root":"case","id":"case-1","apiary":"apiary-hollow","record":{"candidates":[{"value":{"code":"2026-014","openedOn":"2026-03-09","question":"Why do bees crawl in front of the hives?","story":"They crawl and do not fly since the first warm day.","alreadyDone":"Fed sugar twice.","beganOn":"2026-03-07","coloniesInApiary":2,"colonies":["colony-1","colony-2"],"waitsOn":"office","due":"2026-03-16"},"entry":"019cd1a3-8300-7c69-bf9b-0a8174eaa53f","at":"2026-03-09","recordedAt":"2026-03-09T08:08:00.000Z","author":"Office","device":"office-1"}]},"handedOn":{"candidates":[{"value":{"waitsOn":"bench","due":"2026-03-20"},"entry":"019cd1a9-eba0-7190-87d4-89df64e1dd2b","at":"2026-03-10","recordedAt":"2026-03-09T08:15:00.000Z","author":"Office","device":"office-1"}]},"redFlags":{"ropy_brood":{"candidates":[{"value":{"flag":"ropy_brood","state":"absent","on":"2026-03-09"},"entry":"019cd1a4-6d60-7791-aa64-5b37e32ff36b","at":"2026-03-09","recordedAt":"2026-03-09T08:09:00.000Z","author":"Office","device":"office-1"}]}},"findings":{"colony-1":{"crawlers":{"candidates":[{"value":"absent","entry":"019cd19c-a530-74ab-807b-fa9e0def88e2","at":"2026-03-09","recordedAt":"2026-03-09T08:00:30.000Z","author":"Yard","device":"phone-1"},{"value":"present","entry":"019cd1a5-57c0-78ef-a799-6d2895f8a9b9","at":"2026-03-09","recordedAt":"2026-03-09T08:10:00.000Z","author":"Office","device":"office-1"}]}},"whole-apiary":{"spray_nearby":{"candidates":[{"value":"not-looked","entry":"019cd1a6-4220-7009-ad96-f8ba1d33f751","at":"2026-03-09","recordedAt":"2026-03-09T08:11:00.000Z","author":"Office","device":"office-1"}]}}},"colonyStates":{"colony-1":{"candidates":[{"value":{"colony":"colony-1","state":"dying","on":"2026-03-09"},"entry":"019cd1a7-2c80-70a0-8e4f-b8b1f83acd18","at":"2026-03-09","recordedAt":"2026-03-09T08:12:00.000Z","author":"Office","device":"office-1"}]}},"steps":{"tracheal-dissection":{"candidates":[{"value":{"step":"tracheal-dissection","kind":"test","colonies":["colony-1"],"state":"planned"},"entry":"019cd1a8-16e0-7fec-bf63-bd838e70cd45","at":"2026-03-10","recordedAt":"2026-03-09T08:13:00.000Z","author":"Office","device":"office-1"}]}},"samplePlans":{"sample-plan-1":{"candidates":[{"value":{"purpose":"detect","colonies":["colony-1"],"beesPerColony":5,"from":"S","preservative":"ethanol-70","designPrevalence":0.5,"confidence":0.95,"sensitivity":0.9,"on":"2026-03-10"},"entry":"019cd1a9-0140-76f4-858d-df980f8d83c3","at":"2026-03-10","recordedAt":"2026-03-09T08:14:00.000Z","author":"Office","device":"office-1"}]}},"tests":{"019cd1b5-d280-712c-9d1d-8941cee53383":{"value":{"colony":"colony-1","test":"varroa-wash","on":"2026-03-16","mites":2,"bees":300,"kept":"fresh"},"entry":"019cd1b5-d280-712c-9d1d-8941cee53383","at":"2026-03-16","recordedAt":"2026-03-09T08:28:00.000Z","author":"Office","device":"office-1"}},"stopsReported":{},"stopsLifted":{},"decision":{"candidates":[{"value":{"choice":"act-now","colonies":["colony-1"],"on":"2026-03-17","reason":"One of three bees read in full has mites.","reviewOn":"2026-04-17"},"entry":"019cd1b6-bce0-7849-8744-b818ada357d5","at":"2026-03-17","recordedAt":"2026-03-09T08:29:00.000Z","author":"Office","device":"office-1"}]},"outcomes":{"colony-1":{"2026-06-01":{"candidates":[{"value":{"colony":"colony-1","on":"2026-06-01","survived":true},"entry":"019cd1ba-6660-75b4-9618-99291ad5b7cc","at":"2026-06-01","recordedAt":"2026-03-09T08:33:00.000Z","author":"Office","device":"office-1"}]}}},"closed":{"candidates":[{"value":{"on":"2026-06-02","outcome":"answered","confirmedCauses":["acarapis_woodi"],"confirmedBy":"bench"},"entry":"019cd1bd-2580-7a37-ac87-794e9ca5b8bf","at":"2026-06-02","recordedAt":"2026-03-09T08:36:00.000Z","author":"Office","device":"office-1"}]},"files":{}}},"specimens":{},"plans":{},"labelRecords":{},"programmes":{},"unread":[{"entry":"019cd1bb-50c0-7da8-ba41-647b2042e65a","root":"case-1","kind":"finding-recorded","why":"erased"}]}');
INSERT INTO skepsis_main.states VALUES ('label-record-1', 5, 40, 'cbc01f683af2f6e945ed7504e4f64cb8 {"apiaries":{},"cases":{},"specimens":{},"plans":{},"labelRecords":{"label-record-1":{"root":"label-record","id":"label-record-1","record":{"candidates":[{"value":{"jurisdiction":"Invented County","activeIngredient":"menthol","doseGramsPerColony":1,"applications":1,"daysBetweenApplications":0,"minDailyHighCelsius":15,"maxDailyHighCelsius":26,"durationDays":14,"supersAllowed":false,"daysBeforeSupers":28,"placement":"invented","readOn":"2026-03-17","source":"invented for tests: no label says this","invented":true},"entry":"019cd1b7-a740-73b0-aec6-f19c09ff9f0d","at":"2026-03-17","recordedAt":"2026-03-09T08:30:00.000Z","author":"Office","device":"office-1"}]}}},"programmes":{},"unread":[]}');
INSERT INTO skepsis_main.states VALUES ('plan-1', 5, 40, '8bba719be3172007b3ff2716eeb1a99d {"apiaries":{},"cases":{},"specimens":{},"plans":{"plan-1":{"root":"plan","id":"plan-1","case":"case-1","record":{"candidates":[{"value":{"case":"case-1","colonies":["colony-1"],"control":"menthol","labelRecord":"label-record-1","madeOn":"2026-03-17","steps":[{"step":"apply-1","kind":"apply","on":"2026-04-20","until":"2026-05-04","gramsPerColony":1,"gramsInAll":1,"note":"invented dose"},{"step":"recheck-1","kind":"recheck","on":"2026-06-01","until":null,"gramsPerColony":null,"gramsInAll":null,"note":""}],"version":1},"entry":"019cd1b8-91a0-7779-91ba-91af0e4c22af","at":"2026-03-17","recordedAt":"2026-03-09T08:31:00.000Z","author":"Office","device":"office-1"}]},"done":{"apply-1":{"candidates":[{"value":{"step":"apply-1","state":"done","on":"2026-04-21","deviation":"One day late: rain."},"entry":"019cd1b9-7c00-76a0-92e1-527570d59393","at":"2026-04-21","recordedAt":"2026-03-09T08:32:00.000Z","author":"Office","device":"office-1"}]}}}},"labelRecords":{},"programmes":{},"unread":[]}');
INSERT INTO skepsis_main.states VALUES ('main', 5, 40, '4bf4318e0482b303e5e056db520cd66e {"apiaries":{},"cases":{},"specimens":{},"plans":{},"labelRecords":{},"programmes":{},"unread":[]}');
ALTER TABLE ONLY skepsis_main.attached
    ADD CONSTRAINT attached_pkey PRIMARY KEY (entry);
ALTER TABLE ONLY skepsis_main.challenges
    ADD CONSTRAINT challenges_pkey PRIMARY KEY (hash);
ALTER TABLE ONLY skepsis_main.chunks
    ADD CONSTRAINT chunks_once PRIMARY KEY (sha256, start);
ALTER TABLE ONLY skepsis_main.counters
    ADD CONSTRAINT counters_pkey PRIMARY KEY (programme);
ALTER TABLE ONLY skepsis_main.devices
    ADD CONSTRAINT devices_pkey PRIMARY KEY (device);
ALTER TABLE ONLY skepsis_main.entries
    ADD CONSTRAINT entries_by_place UNIQUE (device, seq);
ALTER TABLE ONLY skepsis_main.entries
    ADD CONSTRAINT entries_id_key UNIQUE (id);
ALTER TABLE ONLY skepsis_main.entries
    ADD CONSTRAINT entries_pkey PRIMARY KEY ("position");
ALTER TABLE ONLY skepsis_main.erased
    ADD CONSTRAINT erased_once PRIMARY KEY (id, root);
ALTER TABLE ONLY skepsis_main.files
    ADD CONSTRAINT files_pkey PRIMARY KEY (sha256);
ALTER TABLE ONLY skepsis_main.forecasts
    ADD CONSTRAINT forecasts_once PRIMARY KEY (root, colony);
ALTER TABLE ONLY skepsis_main.heads
    ADD CONSTRAINT heads_pkey PRIMARY KEY (device);
ALTER TABLE ONLY skepsis_main.invitations
    ADD CONSTRAINT invitations_id_key UNIQUE (id);
ALTER TABLE ONLY skepsis_main.invitations
    ADD CONSTRAINT invitations_pkey PRIMARY KEY (hash);
ALTER TABLE ONLY skepsis_main.members
    ADD CONSTRAINT members_pkey PRIMARY KEY (id);
ALTER TABLE ONLY skepsis_main.members
    ADD CONSTRAINT members_sign_in_key UNIQUE (sign_in);
ALTER TABLE ONLY skepsis_main.migrations
    ADD CONSTRAINT migrations_pkey PRIMARY KEY (number);
ALTER TABLE ONLY skepsis_main.night_chunks
    ADD CONSTRAINT night_chunks_once PRIMARY KEY (night, number);
ALTER TABLE ONLY skepsis_main.nights
    ADD CONSTRAINT nights_pkey PRIMARY KEY (night);
ALTER TABLE ONLY skepsis_main.parents
    ADD CONSTRAINT parents_once PRIMARY KEY (root, parent);
ALTER TABLE ONLY skepsis_main.passkeys
    ADD CONSTRAINT passkeys_pkey PRIMARY KEY (id);
ALTER TABLE ONLY skepsis_main.pieces
    ADD CONSTRAINT pieces_once PRIMARY KEY (sha256, sender, start);
ALTER TABLE ONLY skepsis_main.quarantine
    ADD CONSTRAINT quarantine_pkey PRIMARY KEY (hash);
ALTER TABLE ONLY skepsis_main.scopes
    ADD CONSTRAINT scopes_once PRIMARY KEY (member, root);
ALTER TABLE ONLY skepsis_main.sessions
    ADD CONSTRAINT sessions_id_key UNIQUE (id);
ALTER TABLE ONLY skepsis_main.sessions
    ADD CONSTRAINT sessions_pkey PRIMARY KEY (hash);
ALTER TABLE ONLY skepsis_main.states
    ADD CONSTRAINT states_pkey PRIMARY KEY (root);
ALTER TABLE ONLY skepsis_main.uploads
    ADD CONSTRAINT uploads_once PRIMARY KEY (sha256, sender);
CREATE INDEX attached_by_hash ON skepsis_main.attached USING btree (sha256);
CREATE INDEX entries_by_root ON skepsis_main.entries USING btree (root, "position");
CREATE INDEX parents_by_parent ON skepsis_main.parents USING btree (parent);
CREATE INDEX scopes_by_root ON skepsis_main.scopes USING btree (root);
CREATE INDEX states_by_fold ON skepsis_main.states USING btree (fold_version, root);
CREATE INDEX states_by_position ON skepsis_main.states USING btree ("position");
